import type { RateEntry } from "@formweek/contracts";

/** Every product of one mould on one line. */
export interface RateCell {
  readonly lineId: string;
  readonly mouldId: string;
  readonly entries: readonly RateEntry[];
  /** Least and greatest cycles a minute of the products that run; null when none does. */
  readonly range: { readonly least: number; readonly greatest: number } | null;
  readonly isProven: boolean;
}

/** Cells by "mould line"; one for each pair that makes a product. */
export function rateMatrix(entries: readonly RateEntry[]): ReadonlyMap<string, RateCell> {
  const grouped = new Map<string, RateEntry[]>();
  for (const entry of entries) {
    const key = cellKey(entry.mouldId, entry.lineId);
    const known = grouped.get(key);
    if (known === undefined) grouped.set(key, [entry]);
    else known.push(entry);
  }
  return new Map([...grouped].map(([key, own]) => [key, rateCell(own)]));
}

export function cellKey(mouldId: string, lineId: string): string {
  return `${mouldId}\n${lineId}`;
}

function rateCell(entries: readonly RateEntry[]): RateCell {
  const cycles = entries.flatMap((entry) => (entry.rate === null ? [] : [entry.rate.cyclesPerMin]));
  const [first] = entries;
  return {
    lineId: first?.lineId ?? "",
    mouldId: first?.mouldId ?? "",
    entries,
    range: cycles.length === 0 ? null : { least: Math.min(...cycles), greatest: Math.max(...cycles) },
    isProven: entries.some((entry) => entry.rate?.proven === true),
  };
}

/** Parts of a cycle one after the other, as the picture draws them; seconds. */
export interface CycleBar {
  readonly closed: readonly { readonly name: "form" | "stabilise" | "trim"; readonly seconds: number }[];
  readonly openSeconds: number;
  /** Time that the station waits for whatever limits the cycle; 0 when the station itself does. */
  readonly waitSeconds: number;
  readonly cycleSeconds: number;
}

/** The picture of a rate's cycle; null when its parts are not known (a proven rate without a computed cycle). */
export function cycleBar(rate: NonNullable<RateEntry["rate"]>): CycleBar | null {
  const { formSeconds, stabiliseSeconds, trimSeconds, openSeconds } = rate.parts as Readonly<
    Record<string, number | undefined>
  >;
  if (
    formSeconds === undefined ||
    stabiliseSeconds === undefined ||
    trimSeconds === undefined ||
    openSeconds === undefined
  )
    return null;
  const cycleSeconds = 60 / rate.cyclesPerMin;
  const station = formSeconds + stabiliseSeconds + trimSeconds + openSeconds;
  return {
    closed: [
      { name: "form", seconds: formSeconds },
      { name: "stabilise", seconds: stabiliseSeconds },
      { name: "trim", seconds: trimSeconds },
    ],
    openSeconds,
    waitSeconds: Math.max(0, cycleSeconds - station),
    cycleSeconds,
  };
}
