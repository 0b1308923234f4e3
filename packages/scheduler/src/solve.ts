import { lowerBound, type PlanBound } from "./bound/bound.ts";
import { createRandom } from "./chance/random.ts";
import { construct } from "./construct/construct.ts";
import { resume } from "./construct/resume.ts";
import { whyUnplanned } from "./explain/why-unplanned.ts";
import { chooseMethod } from "./improve/choose-method.ts";
import { iterate } from "./improve/iterate.ts";
import { buildPlan } from "./plan/build-plan.ts";
import type { Plan } from "./plan/plan.ts";
import { compile } from "./problem/compile.ts";
import type { CompiledProblem } from "./problem/compiled-problem.ts";
import type { ProblemData } from "./problem/problem-data.ts";
import type { SolveStatistics, StopReason } from "./result.ts";
import type { SolveEnv, SolveParams } from "./solve-env.ts";
import { Decoder } from "./timing/decoder.ts";
import type { Sequences } from "./timing/sequences.ts";

/** Outcome of a search, not yet audited. */
export interface SearchOutcome {
  readonly plan: Plan;
  readonly stopped: StopReason;
  readonly statistics: SolveStatistics;
  /** What no plan can go below. */
  readonly bound: PlanBound;
}

/** The plan of given sequences, with stretches, reasons and breakdown. */
function planOf(problem: CompiledProblem, sequences: Sequences): Plan {
  const decoder = new Decoder(problem, true);
  decoder.decode(sequences);
  return buildPlan(problem, decoder, whyUnplanned(decoder));
}

/** The recipe: compile, construct, improve, decode. The problem must be free of faults. */
export function search(data: ProblemData, params: SolveParams, env: SolveEnv): SearchOutcome {
  const startedMs = env.monotonicMs();
  const problem = compile(data);
  const decoder = new Decoder(problem, false);
  const start =
    params.startFrom === undefined ? construct(problem, decoder) : resume(decoder, params.startFrom);
  const firstTotal = decoder.decode(start);
  const firstPlanMs = env.monotonicMs() - startedMs;
  const bound = lowerBound(problem);
  const method = chooseMethod(problem);
  const search = method.begin({ problem, decoder, random: createRandom(params.seed), start });
  const { steps, stopped } = iterate({
    search,
    params,
    env,
    startedMs,
    floor: bound.total,
    report: (done, elapsedMs, share) => {
      const best = search.best();
      env.onProgress({
        steps: done,
        elapsedMs,
        share,
        bestTotal: search.bestMoney(),
        lateOrders: lateOrdersOf(problem, best),
        bestPlan: () => planOf(problem, best),
      });
    },
  });
  const plan = planOf(problem, search.best());
  return {
    plan,
    stopped,
    statistics: {
      steps,
      evaluations: search.evaluations(),
      elapsedMs: env.monotonicMs() - startedMs,
      firstPlanMs,
      firstTotal,
      bestTotal: plan.objective.total,
    },
    bound,
  };
}

function lateOrdersOf(problem: CompiledProblem, sequences: Sequences): number {
  const decoder = new Decoder(problem, false);
  decoder.decode(sequences);
  return decoder.sums.lateOrders;
}
