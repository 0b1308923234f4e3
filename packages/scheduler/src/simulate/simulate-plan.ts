import { resume } from "../construct/resume.ts";
import { firstElsewhere } from "../promise/plan-follows.ts";
import { lastEnds } from "../promise/standing.ts";
import type { Plan } from "../plan/plan.ts";
import { compiling } from "../problem/compile.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import { validate } from "../problem/validate.ts";
import type { ProblemFault } from "../result.ts";
import { Decoder } from "../timing/decoder.ts";
import type { Work } from "../work/work.ts";
import { simulate } from "./simulate.ts";
import type { FaultySimulation, Simulation, SimulationParams } from "./simulation.ts";
import { simulationFaults } from "./spreads.ts";

/** What a plan's simulation comes to. */
export type SimulationResult =
  | Simulation
  | FaultySimulation
  | { readonly status: "faulty-problem"; readonly faults: readonly ProblemFault[] }
  /** Timing the plan's runs in their order gives other times; an order that would lie elsewhere. */
  | { readonly status: "plan-does-not-follow"; readonly orderId: string };

/**
 * Plays a plan many times under random failures and durations: when its orders are finished, and by which chance in time, which is by
 * their instants in `promised`, else by their due dates. How it is played says `simulate`.
 */
export function* simulatePlan(
  data: ProblemData,
  plan: Plan,
  params: SimulationParams,
  promised: ReadonlyMap<string, number> = new Map(),
): Work<SimulationResult> {
  const faults = validate(data);
  if (faults.length > 0) return { status: "faulty-problem", faults };
  const wishes = simulationFaults(data, params);
  if (wishes.length > 0) return { status: "faulty-simulation", faults: wishes };
  const problem = yield* compiling(data);
  const decoder = new Decoder(problem, false);
  const sequences = yield* resume(decoder, plan);
  const elsewhere = firstElsewhere(decoder, plan);
  if (elsewhere !== null) return { status: "plan-does-not-follow", orderId: elsewhere };
  const by = Float64Array.from(
    data.jobs,
    ({ orderId, dueAt, conditioningSeconds }) =>
      (promised.get(orderId) ?? dueAt) - conditioningSeconds - problem.origin,
  );
  return yield* simulate({ problem, sequences, end: lastEnds(problem, decoder), by }, params);
}
