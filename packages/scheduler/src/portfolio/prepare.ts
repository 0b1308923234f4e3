import { lowerBound, type PlanBound } from "../bound/bound.ts";
import { construct } from "../construct/construct.ts";
import { resume } from "../construct/resume.ts";
import { compile } from "../problem/compile.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import type { SolveEnv, SolveParams } from "../solve-env.ts";
import { Decoder } from "../timing/decoder.ts";
import type { Sequences } from "../timing/sequences.ts";

/** What all members of a portfolio start from; the same in every thread. */
export interface Prepared {
  readonly problem: CompiledProblem;
  readonly start: Sequences;
  /** What no plan can go below. */
  readonly bound: PlanBound;
  /** Clock at which the work began, ms. */
  readonly startedMs: number;
  readonly firstPlanMs: number;
  readonly firstTotal: number;
}

/** Compiles a problem that is free of faults, and makes its first plan; null when cancelled before there is one. */
export function prepare(data: ProblemData, params: SolveParams, env: SolveEnv): Prepared | null {
  const startedMs = env.monotonicMs();
  const problem = compile(data);
  const decoder = new Decoder(problem, false);
  const start =
    params.startFrom === undefined
      ? construct(problem, decoder, env.isCancelled)
      : resume(decoder, params.startFrom);
  if (start === null) return null;
  const firstTotal = decoder.decode(start);
  const firstPlanMs = env.monotonicMs() - startedMs;
  return { problem, start, bound: lowerBound(problem), startedMs, firstPlanMs, firstTotal };
}
