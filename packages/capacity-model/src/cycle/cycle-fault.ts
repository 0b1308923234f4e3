/** Why no cycle can be computed; each code names one impossible or contradictory input. */
export type CycleFaultCode =
  | "polymer-not-the-sheets"
  | "net-mass-above-shot"
  | "wall-thicker-than-sheet"
  | "forming-not-above-demould"
  | "demould-not-above-mould"
  | "index-longer-than-oven"
  | "oven-flux-beyond-radiation"
  | "handling-table-falls"
  | "overlap-longer-than-move"
  | "cycle-beyond-an-hour";

/** An impossible input as data: what is wrong, what to do, and the numbers that contradict each other (unit in the name). */
export interface CycleFault {
  readonly code: CycleFaultCode;
  readonly cause: string;
  readonly remedy: string;
  readonly numbers: Readonly<Record<string, number>>;
}

/** No cycle can be given; `faults` holds every reason found, at least one. */
export interface Impossible {
  readonly kind: "impossible";
  readonly faults: readonly [CycleFault, ...CycleFault[]];
}

/** The faults as a result, or null when there are none. */
export function impossibleBy(faults: readonly CycleFault[]): Impossible | null {
  const [first, ...others] = faults;
  return first === undefined ? null : { kind: "impossible", faults: [first, ...others] };
}
