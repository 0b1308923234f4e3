import {
  openPromise,
  solve,
  type Job,
  type OpenDesk,
  type Plan,
  type ProblemData,
} from "@formweek/scheduler";
import { benchClock, type BenchClock } from "../bench-solve.ts";
import { plantedProblem, type PlantedSize } from "../planted/planted-problem.ts";

/** A desk on a plan that stands, and the orders that were held back to be asked for. */
export interface StandingDesk {
  readonly desk: OpenDesk;
  readonly plan: Plan;
  readonly held: readonly Job[];
  readonly lateInPlan: number;
  readonly openMs: number;
}

/** The planted schedule, in which every order is on time, or one that was searched for so long. */
export type StandingKind =
  { readonly kind: "hidden" } | { readonly kind: "solved"; readonly seconds: number };

/** So many orders, spread evenly over the book, are held back. */
function heldBack(jobs: readonly Job[], asks: number): ReadonlySet<Job> {
  return new Set(Array.from({ length: asks }, (_, i) => jobs[Math.floor(((i + 0.5) * jobs.length) / asks)]!));
}

function solved(problem: ProblemData, seed: number, seconds: number, clock: BenchClock): Plan {
  const result = solve(
    problem,
    { seed, maxSteps: null, maxMs: seconds * 1000 },
    { monotonicMs: benchClock(clock), isCancelled: () => false, onProgress: () => undefined },
  );
  if (result.status !== "planned") throw new Error(`The planner's answer is ${result.status}.`);
  return result.plan;
}

/** A planted plant without some of its orders, and the desk open on its plan. */
export function standingDesk(
  size: PlantedSize,
  asks: number,
  kind: StandingKind,
  clock: BenchClock,
): StandingDesk {
  const { problem, hidden } = plantedProblem({ ...size, orders: size.orders + asks });
  const held = heldBack(problem.jobs, asks);
  const jobs = problem.jobs.filter((job) => !held.has(job));
  const standing = { ...problem, jobs };
  const kept = new Set(jobs.map(({ orderId }) => orderId));
  const plan =
    kind.kind === "hidden"
      ? { ...hidden, lots: hidden.lots.filter(({ orderId }) => kept.has(orderId)) }
      : solved(standing, size.seed, kind.seconds, clock);
  const now = benchClock(clock);
  const opened = now();
  const desk = openPromise(standing, plan, new Map(), { retime: kind.kind === "hidden" });
  if (desk.status !== "open") throw new Error(`The desk is ${desk.status}.`);
  const openMs = now() - opened;
  const dueOf = new Map(jobs.map(({ orderId, dueAt }) => [orderId, dueAt]));
  const stands = desk.plan();
  const lateInPlan = stands.lots.filter((lot) => lot.finish > dueOf.get(lot.orderId)!).length;
  return { desk, plan: stands, held: [...held], lateInPlan, openMs };
}
