import { useSearchParams } from "wouter";

/** Scenarios that can be worked out and compared at once. */
export const MOST_COMPARED = 3;

/** What the page shows: scenarios side by side, and what a search for help has found. */
export interface WhatIfAddress {
  /** Ids, in the order in which they were ticked. */
  readonly compared: readonly string[];
  /** Run that looked for what helps; null: none is shown. */
  readonly helpRunId: string | null;
}

/** What is shown lives in the address, so that it can be sent around and stays over a reload. */
export function useWhatIfAddress(): readonly [WhatIfAddress, (changes: Partial<WhatIfAddress>) => void] {
  const [address, setAddress] = useSearchParams();
  const shown = readAddress(address);
  const show = (changes: Partial<WhatIfAddress>): void =>
    setAddress(
      (before) => {
        const { compared, helpRunId } = { ...readAddress(before), ...changes };
        const next = new URLSearchParams();
        if (compared.length > 0) next.set("with", compared.join(","));
        if (helpRunId !== null) next.set("help", helpRunId);
        return next;
      },
      { replace: true },
    );
  return [shown, show];
}

function readAddress(address: URLSearchParams): WhatIfAddress {
  const ids = (address.get("with") ?? "").split(",").filter((id) => id !== "");
  return { compared: [...new Set(ids)].slice(0, MOST_COMPARED), helpRunId: address.get("help") };
}
