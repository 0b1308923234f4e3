import { refusalOfOrders, refusalOfPlant } from "../commands/record-faults.ts";
import { type Result, ok, refused } from "../result.ts";
import { assembleProblem } from "./assemble-problem.ts";
import type { Assembled } from "./assembled.ts";
import { instantOfIso } from "./iso-instant.ts";
import type { PlanDocument } from "./plan-document.ts";
import type { PlanningSnapshot } from "./planning-snapshot.ts";

/**
 * The problem of the inputs as they are now over the horizon of a plan, in which the plan is worked on by hand. Where the
 * plant fixes no planning start, time stands at the plan's start: what it has begun stays where it is.
 */
export function assembleForPlan(snapshot: PlanningSnapshot, document: PlanDocument): Result<Assembled> {
  const { plant, orders } = snapshot;
  const refusal = refusalOfPlant(plant) ?? refusalOfOrders(orders, plant);
  if (refusal !== null) return refused(refusal);
  const now = instantOfIso(document.horizon.start);
  if (now === null) throw new Error(`a stored plan begins at "${document.horizon.start}"`);
  return ok(assembleProblem({ ...snapshot, now }));
}
