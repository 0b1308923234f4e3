import type { OrderChange } from "@formweek/contracts";

/** What a step did, for a line of words. */
export interface StepSummary {
  readonly kind: "changed" | "removed" | "added";
  readonly orderIds: readonly string[];
}

/** Sums up the changes of one step; a step that does several things counts as a change. */
export function stepSummary(changes: readonly OrderChange[]): StepSummary {
  const orderIds = changes.map(({ before, after }) => after?.id ?? before?.id ?? "");
  const isAll = (side: "before" | "after"): boolean => changes.every((change) => change[side] === null);
  return { kind: isAll("after") ? "removed" : isAll("before") ? "added" : "changed", orderIds };
}
