import type { SolveParams } from "@formweek/scheduler";
import { assembleProblem } from "../planning/assemble-problem.ts";
import type { Assembled } from "../planning/assembled.ts";
import { atOwnPrices } from "../planning/at-own-prices.ts";
import { frozenPins, withPins } from "../planning/frozen-pins.ts";
import type { FrozenPlan } from "../planning/frozen-plan.ts";
import { keepPromises } from "../planning/keep-promises.ts";
import { planOfDocument } from "../planning/plan-of-document.ts";
import type { PlanningSnapshot } from "../planning/planning-snapshot.ts";
import type { StoredPlan } from "../ports/plan-repository.ts";
import type { SolveProgressReport } from "../ports/solve-runner.ts";
import { type Result, ok, refused } from "../result.ts";
import type { PlanOfInputs } from "../scenarios/turned-orders.ts";
import type { Search } from "./search-records.ts";
import { solveOverFrozen } from "./solve-over-frozen.ts";
import { planRejected, problemFaulty } from "./solve-refusals.ts";

/** What all plans of one run have in common, so that they can be held against each other. */
export interface BesideTerms {
  /** Instant at which problems are put together, seconds. */
  readonly at: number;
  /** Where the searches begin; null: anew. */
  readonly working: StoredPlan | null;
  /** Null: nothing is frozen. */
  readonly frozen: FrozenPlan | null;
  /** Budget of each plan. */
  readonly params: SolveParams;
  /** Plans of the run at the most. */
  readonly all: number;
  /** Clock at which the run began, ms. */
  readonly begunMs: number;
}

/** The inputs of one plan, and how many plans of the run there are already. */
export interface BesideAsk {
  readonly snapshot: PlanningSnapshot;
  readonly done: number;
}

/** Plans some inputs beside the working plan, on from it; null where the run was stopped before there was a plan. */
export async function planBeside(
  { ports, run, progress, signal }: Search,
  { at, working, frozen, params, all, begunMs }: BesideTerms,
  { snapshot, done }: BesideAsk,
): Promise<Result<PlanOfInputs | null>> {
  const made = assembleProblem({ ...snapshot, now: at });
  const pins = frozen === null ? [] : frozenPins(made.problem, frozen);
  const assembled: Assembled = { ...made, problem: withPins(made.problem, pins) };
  const problem = keepPromises(assembled.problem, snapshot.heldOrderIds);
  const onward = working === null ? {} : { startFrom: planOfDocument(working.document, problem) };
  const onProgress = (report: SolveProgressReport): void =>
    progress.report({
      ...report,
      share: (done + Math.min(1, report.share)) / all,
      elapsedMs: ports.clock.monotonicMs() - begunMs,
    });
  const task = { problem, params: { ...params, ...onward }, threads: run.params.threads, onProgress, signal };
  const { result, isWeighed } = await solveOverFrozen(ports.solver, task, { given: frozen, pins });
  switch (result.status) {
    case "cancelled":
      return ok(null);
    case "faulty-problem":
      return refused(problemFaulty(result.faults));
    case "rejected":
      return refused(planRejected(result.violations));
    case "planned":
      return ok({
        assembled,
        plan: isWeighed || problem !== assembled.problem ? atOwnPrices(assembled, result.plan) : result.plan,
      });
  }
}
