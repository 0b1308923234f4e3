import { type Plan, auditPlan, openEdits, openPromise } from "@formweek/scheduler";
import { assembleProblem } from "../planning/assemble-problem.ts";
import type { Assembled } from "../planning/assembled.ts";
import { heldByNumber, sharesByOrder } from "../planning/planning-snapshot.ts";
import type { StoredHold } from "../ports/hold-repository.ts";

/** A plan and what it was made for. */
export interface MadePlan {
  readonly assembled: Assembled;
  readonly plan: Plan;
  /** Orders of it that were held when it was begun. */
  readonly heldOrderIds: ReadonlySet<string>;
}

/**
 * The plan that a run has found, with what was held or given back while it ran: nothing that a customer was promised is lost by
 * it. New holds get the earliest place at which nobody else becomes later than promised; runs of ended ones go. Pure.
 */
export function planWithHolds(
  made: MadePlan,
  holds: readonly StoredHold[],
): Pick<MadePlan, "assembled" | "plan"> {
  const { assembled, plan, heldOrderIds } = made;
  const held = new Set<string>(holds.map(({ order }) => order.id));
  const isSame = held.size === heldOrderIds.size && [...held].every((id) => heldOrderIds.has(id));
  if (isSame) return { assembled, plan };
  const changed = heldNow(made, holds, held);
  const { problem } = changed;
  const opened = openEdits(problem, plan);
  if (!opened.ok) return { assembled, plan };
  const planned = new Set(opened.value.plan.lots.map(({ orderId }) => orderId));
  const missing = problem.jobs.filter(({ orderId }) => held.has(orderId) && !planned.has(orderId));
  const without = { ...problem, jobs: problem.jobs.filter((job) => !missing.includes(job)) };
  const opening = openPromise(without, { ...opened.value.plan, unplanned: [] });
  if (opening.status !== "open") return { assembled: changed, plan: opened.value.plan };
  let desk = opening;
  for (const job of missing) {
    const answer = desk.promise(job);
    if (answer.status === "promised") desk = answer.promise.hold();
  }
  const whole = openEdits(problem, desk.plan());
  const found = whole.ok ? whole.value.plan : opened.value.plan;
  return { assembled: changed, plan: auditPlan(problem, found).length === 0 ? found : opened.value.plan };
}

/** What the plan was made for, with the holds that stand now. */
function heldNow(
  { assembled, heldOrderIds }: MadePlan,
  holds: readonly StoredHold[],
  held: ReadonlySet<string>,
): Assembled {
  const { plant, pins, demands, stockShares, problem } = assembled;
  const stays = (id: string): boolean => !heldOrderIds.has(id) || held.has(id);
  const added = holds.filter(({ order }) => !heldOrderIds.has(order.id));
  const changed = assembleProblem({
    plant,
    pins,
    orders: [
      ...demands.map(({ order }) => order).filter(({ id }) => !heldOrderIds.has(id)),
      ...heldByNumber(holds.map(({ order }) => order)),
    ],
    stockShares: sharesByOrder([
      ...stockShares.filter(({ orderId }) => stays(orderId)),
      ...added.map(({ order, stockPieces }) => ({ orderId: order.id, pieces: stockPieces })),
    ]),
    now: problem.horizon.start,
  });
  const made = new Set(changed.problem.jobs.map(({ orderId }) => orderId));
  return {
    ...changed,
    problem: { ...changed.problem, pins: problem.pins.filter(({ orderId }) => made.has(orderId)) },
  };
}
