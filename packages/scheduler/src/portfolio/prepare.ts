import { bounding, PLAINEST_BOUND, type PlanBound } from "../bound/bound.ts";
import { construct } from "../construct/construct.ts";
import { resume } from "../construct/resume.ts";
import { compiling } from "../problem/compile.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import type { SolveEnv, SolveParams } from "../solve-env.ts";
import { Decoder } from "../timing/decoder.ts";
import type { Sequences } from "../timing/sequences.ts";
import { finishUnless, type Work } from "../work/work.ts";

/** A compiled problem and the first plan of it. */
export interface FirstPlan {
  readonly problem: CompiledProblem;
  readonly start: Sequences;
  /** Clock at which the work began, ms. */
  readonly startedMs: number;
  readonly firstPlanMs: number;
  readonly firstTotal: number;
}

/** What all members of a portfolio start from; the same in every thread. */
export interface Prepared extends FirstPlan {
  /** What no plan can go below; the plainest one where a cancel came before it was worked out. */
  readonly bound: PlanBound;
}

/** Compiles a problem that is free of faults, and makes its first plan. */
export function* firstPlanning(data: ProblemData, params: SolveParams, env: SolveEnv): Work<FirstPlan> {
  const { startFrom } = params;
  const startedMs = env.monotonicMs();
  const problem = yield* compiling(data);
  yield;
  const decoder = new Decoder(problem, false);
  const start = yield* startFrom === undefined ? construct(problem, decoder) : resume(decoder, startFrom);
  yield;
  const firstTotal = decoder.decode(start);
  return { problem, start, startedMs, firstPlanMs: env.monotonicMs() - startedMs, firstTotal };
}

/** Bounds a problem that has a first plan. */
export function bounded(first: FirstPlan, env: SolveEnv): Prepared {
  return { ...first, bound: finishUnless(env.isCancelled, bounding(first.problem)) ?? PLAINEST_BOUND };
}
