import {
  applyScenario,
  assembleProblem,
  type PlanningSnapshot,
  type ScenarioChange,
} from "@formweek/application";
import { generatePlant } from "@formweek/demo-plant";
import { solve, type Plan, type ProblemData } from "@formweek/scheduler";
import type { PlantedSize } from "../planted/planted-problem.ts";

export interface ScenarioFigures {
  readonly count: number;
  /** Steps of the search in each. */
  readonly steps: number;
  readonly perMinute: number;
  /** Of one scenario: making its changes and putting its problem together, ms. */
  readonly preparingMs: number;
  /** Of one scenario: planning on from the plan that stands, ms. */
  readonly planningMs: number;
}

/** By turns one more set of a mould and an order cancelled, each another one. */
function changeOf({ plant, orders }: PlanningSnapshot, place: number): ScenarioChange {
  const mould = plant.moulds[place % plant.moulds.length];
  const order = orders[place % orders.length];
  if (mould === undefined || order === undefined) throw new Error("A plant of no moulds or no orders.");
  return place % 2 === 0
    ? { kind: "more copies", mouldId: mould.id, more: 1 }
    : { kind: "cancel order", orderId: order.id };
}

function planned(problem: ProblemData, maxSteps: number, standing: Plan | null): Plan {
  const made = new Set(problem.jobs.map(({ orderId }) => orderId));
  const kept = <T extends { readonly orderId: string }>(entries: readonly T[]): readonly T[] =>
    entries.filter(({ orderId }) => made.has(orderId));
  const startFrom =
    standing === null
      ? null
      : { ...standing, lots: kept(standing.lots), unplanned: kept(standing.unplanned) };
  const result = solve(
    problem,
    { seed: 1, maxSteps, maxMs: null, ...(startFrom === null ? {} : { startFrom }) },
    { monotonicMs: () => 0, isCancelled: () => false, onProgress: () => undefined },
  );
  if (result.status !== "planned") throw new Error(`The planner's answer is ${result.status}.`);
  return result.plan;
}

/** Plans so many scenarios of one change each on from a plan of a made-up plant. `now`: a clock, ms. */
export function scenarioFigures(
  { lines, orders, seed }: PlantedSize,
  { count, steps }: Pick<ScenarioFigures, "count" | "steps">,
  now: () => number,
): ScenarioFigures {
  const snapshot: PlanningSnapshot = {
    ...generatePlant({ lines, orders, seed }),
    bookRevision: 1,
    heldOrderIds: new Set(),
    stockShares: [],
    pins: [],
  };
  const standing = planned(assembleProblem({ ...snapshot, now: 0 }).problem, steps, null);
  let [preparing, planning] = [0, 0];
  for (let place = 0; place < count; place++) {
    const began = now();
    const changed = applyScenario(snapshot, [changeOf(snapshot, place)]);
    const { problem } = assembleProblem({ ...changed, now: 0 });
    const prepared = now();
    planned(problem, steps, standing);
    preparing += prepared - began;
    planning += now() - prepared;
  }
  return {
    count,
    steps,
    perMinute: (60_000 * count) / (preparing + planning),
    preparingMs: preparing / count,
    planningMs: planning / count,
  };
}
