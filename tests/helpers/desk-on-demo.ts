import {
  ENGINE_VERSION,
  assembleProblem,
  deskOnPlan,
  describePlan,
  type StandingDesk,
} from "@formweek/application";
import type { Order, Plant } from "@formweek/capacity-model";
import { solve } from "@formweek/scheduler";
import { stillEnv } from "./still-env.ts";

/** Plans orders of a plant in a few steps and opens the desk on the plan, as it is before the plan begins. */
export function deskOf(plant: Plant, orders: readonly Order[], steps = 60): StandingDesk {
  const assembled = assembleProblem({ plant, orders, pins: [], now: 0 });
  const result = solve(assembled.problem, { seed: 3, maxSteps: steps, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(`the orders are ${result.status}`);
  const origin = { engineVersion: ENGINE_VERSION, seed: 3, steps, bound: null };
  const document = describePlan(assembled, result.plan, origin);
  const opened = deskOnPlan({ plant, orders, document }, 0);
  if (!opened.ok) throw new Error(opened.error.cause);
  return opened.value;
}
