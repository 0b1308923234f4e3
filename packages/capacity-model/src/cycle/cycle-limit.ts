/** What can hold the cycle: nothing runs faster than the slowest of these. */
export type LimitCode =
  | "station" // forming, stabilising, trimming and the open time, one after the other
  | "oven"
  | "sheet-flow"
  | "stacker"
  | "rim-rolling"
  | "line-dry-cycle"
  | "mould-cycle";

/** One limit and the shortest cycle that it allows. */
export interface CycleLimit {
  readonly code: LimitCode;
  readonly cycleSeconds: number;
  readonly sentence: string;
}

/** The binding limit, the next one, and the distance between them. */
export interface BindingLimit {
  readonly code: LimitCode;
  readonly cycleSeconds: number;
  /** null when there is only one limit. */
  readonly next: CycleLimit | null;
  /** Share by which the binding limit's cycle is longer than the next one's; 0 when they tie, null without a next. */
  readonly overNextShare: number | null;
}

/** Limits, slowest first; equal ones keep the order in which they were given. */
export function slowestFirst(limits: readonly CycleLimit[]): readonly CycleLimit[] {
  return limits
    .map((limit, place) => ({ limit, place }))
    .sort((a, b) => b.limit.cycleSeconds - a.limit.cycleSeconds || a.place - b.place)
    .map(({ limit }) => limit);
}

/** Which of the limits binds and by how much over the next. */
export function bindingLimit(limits: readonly [CycleLimit, ...CycleLimit[]]): BindingLimit {
  const [binding, next] = slowestFirst(limits) as readonly [CycleLimit, CycleLimit?];
  return {
    code: binding.code,
    cycleSeconds: binding.cycleSeconds,
    next: next ?? null,
    overNextShare: next === undefined ? null : binding.cycleSeconds / next.cycleSeconds - 1,
  };
}
