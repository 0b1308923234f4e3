import { useSearchParams } from "wouter";
import { bucketSizes, resourceKinds, type LoadView } from "../../sync/load.ts";

/** What the page shows: a view, and a resource and bucket of it. */
export interface LoadAddress extends LoadView {
  readonly id: string | null;
  /** Start of the chosen bucket, as the server writes it. */
  readonly at: string | null;
}

const PARTS = ["kind", "bucket", "from", "id", "at"] as const;

/** What is shown lives in the address, so that it can be sent around; what the address gets wrong counts as left out. */
export function useLoadAddress(): readonly [LoadAddress, (changes: Partial<LoadAddress>) => void] {
  const [address, setAddress] = useSearchParams();
  const from = address.get("from");
  const shown: LoadAddress = {
    kind: resourceKinds.find((kind) => kind === address.get("kind")) ?? "line",
    bucket: bucketSizes.find((bucket) => bucket === address.get("bucket")) ?? "week",
    from: from !== null && /^\d{4}-\d{2}-\d{2}$/.test(from) && isDay(from) ? from : null,
    id: address.get("id"),
    at: address.get("at"),
  };
  const show = (changes: Partial<LoadAddress>): void => {
    const next = { ...shown, ...changes };
    setAddress(
      Object.fromEntries(PARTS.flatMap((part) => (next[part] === null ? [] : [[part, next[part]]]))),
      { replace: true },
    );
  };
  return [shown, show];
}

const isDay = (date: string): boolean => {
  const at = Date.parse(`${date}T00:00:00Z`);
  return Number.isFinite(at) && new Date(at).toISOString().startsWith(date);
};
