import { applyEdits, openEdits, type Plan, type ProblemData, type ProblemEdit } from "@formweek/scheduler";

/** Due dates are put forward on whole hours, s. */
const WHOLE = 3600;

/** The due date that an order would meet in a plan that stays as it is, with the plan timed and priced for it. */
export interface MetDue {
  readonly edit: ProblemEdit;
  readonly problem: ProblemData;
  readonly plan: Plan;
}

/** The first whole hour at which a late order is ready, nobody else moved; null where it is not made or is ready in time. */
export function laterDue(problem: ProblemData, plan: Plan, orderId: string): MetDue | null {
  const finishes = plan.lots.filter((lot) => lot.orderId === orderId).map(({ finish }) => finish);
  const job = problem.jobs.find((each) => each.orderId === orderId);
  const at = Math.ceil(Math.max(...finishes) / WHOLE) * WHOLE;
  if (job === undefined || finishes.length === 0 || at <= job.dueAt) return null;
  const edit: ProblemEdit = { kind: "later due", orderId, at };
  const edited = applyEdits(problem, [edit]);
  const opened = edited.ok ? openEdits(edited.problem, plan) : null;
  if (!edited.ok || opened === null || !opened.ok) return null;
  return { edit, problem: edited.problem, plan: opened.value.plan };
}
