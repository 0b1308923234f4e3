import type { BoardPlan } from "./board-plan.ts";

/** An order that changes sides between two plans, with how late it is in the second, seconds. */
export interface ChangedSide {
  readonly orderId: string;
  readonly lateSeconds: number;
}

/** What one plan is against another, in the figures that a planner looks at first. */
export interface PlanDifference {
  readonly late: readonly [before: number, after: number];
  readonly changeHours: readonly [before: number, after: number];
  readonly unplanned: readonly [before: number, after: number];
  readonly cost: readonly [before: number, after: number];
  /** Late after but not before, the latest first. */
  readonly newlyLate: readonly ChangedSide[];
  /** Late before, on time after. */
  readonly onTimeAgain: readonly ChangedSide[];
}

/** What changes from one plan to another of the same orders. */
export function planDifference(before: BoardPlan, after: BoardPlan): PlanDifference {
  const pair = (of: (plan: BoardPlan) => number): readonly [number, number] => [of(before), of(after)];
  const newlyLate: ChangedSide[] = [];
  const onTimeAgain: ChangedSide[] = [];
  for (const { orderId, lateSeconds, state } of after.orders.values()) {
    const was = before.orders.get(orderId)?.lateSeconds ?? 0;
    if (was === 0 && lateSeconds > 0) newlyLate.push({ orderId, lateSeconds });
    if (was > 0 && lateSeconds === 0 && state === "on time") onTimeAgain.push({ orderId, lateSeconds });
  }
  newlyLate.sort((a, b) => b.lateSeconds - a.lateSeconds);
  return {
    late: pair((plan) => plan.document.summary.late),
    changeHours: pair((plan) => plan.document.summary.changeHours),
    unplanned: pair((plan) => plan.document.summary.unplanned),
    cost: pair((plan) => plan.document.objective.total),
    newlyLate,
    onTimeAgain,
  };
}
