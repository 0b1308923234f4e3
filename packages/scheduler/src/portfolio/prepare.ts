import { bounding, PLAINEST_BOUND, type PlanBound } from "../bound/bound.ts";
import { construct } from "../construct/construct.ts";
import { resume } from "../construct/resume.ts";
import { compile } from "../problem/compile.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import type { SolveEnv, SolveParams } from "../solve-env.ts";
import { Decoder } from "../timing/decoder.ts";
import type { Sequences } from "../timing/sequences.ts";
import { finishUnless, type Work } from "../work/work.ts";
import { auditedPlanning, type AuditedPlan } from "./audited-plan.ts";

/** What all members of a portfolio start from; the same in every thread. */
export interface Prepared {
  readonly problem: CompiledProblem;
  readonly start: Sequences;
  /** The plan of `start` where making it takes long enough to be noticed after a cancel, else null. */
  readonly startPlan: AuditedPlan | null;
  /** What no plan can go below; the plainest one where a cancel came before it was worked out. */
  readonly bound: PlanBound;
  /** Clock at which the work began, ms. */
  readonly startedMs: number;
  readonly firstPlanMs: number;
  readonly firstTotal: number;
}

/** Ways to make an order, over all orders, up to which a first plan takes so little time that a cancel waits for it. */
const SMALL_WAYS = 20_000;

/** True where a cancel may end the solve before there is a plan. */
function isLarge({ jobs }: ProblemData): boolean {
  return jobs.reduce((sum, { options }) => sum + options.length, 0) > SMALL_WAYS;
}

interface FirstPlan {
  readonly problem: CompiledProblem;
  readonly start: Sequences;
  readonly startPlan: AuditedPlan | null;
  readonly firstPlanMs: number;
  readonly firstTotal: number;
}

/**
 * Compiles and makes the first plan. A large one's is audited at once: so it can be handed out at once, and what makes and audits
 * plans has run before a cancel waits for it.
 */
function* firstPlan(
  data: ProblemData,
  { startFrom }: SolveParams,
  sinceStart: () => number,
): Work<FirstPlan> {
  const problem = compile(data);
  yield;
  const decoder = new Decoder(problem, false);
  const start = yield* startFrom === undefined ? construct(problem, decoder) : resume(decoder, startFrom);
  const firstTotal = decoder.decode(start);
  const firstPlanMs = sinceStart();
  yield;
  const startPlan = isLarge(data) ? yield* auditedPlanning(problem, start) : null;
  return { problem, start, startPlan, firstPlanMs, firstTotal };
}

/** Makes the first plan of a problem that is free of faults, and bounds it; null where a large one is cancelled before it has its first. */
export function prepare(data: ProblemData, params: SolveParams, env: SolveEnv): Prepared | null {
  const startedMs = env.monotonicMs();
  const isGivenUp = isLarge(data) ? env.isCancelled : () => false;
  const first = finishUnless(
    isGivenUp,
    firstPlan(data, params, () => env.monotonicMs() - startedMs),
  );
  if (first === null) return null;
  const bound = finishUnless(env.isCancelled, bounding(first.problem)) ?? PLAINEST_BOUND;
  return { ...first, bound, startedMs };
}
