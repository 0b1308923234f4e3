import {
  ENGINE_VERSION,
  type Plan,
  type PlanBound,
  type ProblemData,
  type SolveParams,
  type SolveStatistics,
} from "@formweek/scheduler";
import { addStep, stepOnto } from "../commands/add-step.ts";
import { refusalOfOrders, refusalOfPlant } from "../commands/record-faults.ts";
import type { AppError } from "../errors.ts";
import { atOwnPrices } from "../planning/at-own-prices.ts";
import { assembleProblem } from "../planning/assemble-problem.ts";
import type { Assembled } from "../planning/assembled.ts";
import { describePlan, describeProvisional } from "../planning/describe-plan.ts";
import { favouredProblem } from "../planning/favoured-problem.ts";
import { frozenPins, withPins } from "../planning/frozen-pins.ts";
import { frozenPlanOf } from "../planning/frozen-plan.ts";
import { keepPromises } from "../planning/keep-promises.ts";
import { knownBound } from "../planning/known-bound.ts";
import { planOfDocument } from "../planning/plan-of-document.ts";
import { planningSnapshot } from "../planning/planning-snapshot.ts";
import type { JobContext } from "../ports/job-queue.ts";
import type { StoredPlan } from "../ports/plan-repository.ts";
import type { Ports } from "../ports/ports.ts";
import type { Concern, SolveRun } from "../ports/run-repository.ts";
import type { SolveTask } from "../ports/solve-runner.ts";
import { workingPlanOf } from "../queries/working-plan-of.ts";
import { publishPending } from "../publish-pending.ts";
import { type Result, ok, refused } from "../result.ts";
import { changeRun } from "./change-run.ts";
import { runSearch } from "./run-findings.ts";
import { planWithHolds } from "./plan-with-holds.ts";
import { progressKeeper } from "./progress-keeper.ts";
import { provisionalKeeper, type ProvisionalKeeper } from "./provisional-keeper.ts";
import { solveOverFrozen } from "./solve-over-frozen.ts";
import { plantGone, planRejected, problemFaulty, solverFailed } from "./solve-refusals.ts";

interface Solved {
  readonly plan: Plan;
  readonly bound: PlanBound;
  readonly statistics: SolveStatistics;
  readonly assembled: Assembled;
  /** Orders of it that were held when the run began. */
  readonly heldOrderIds: ReadonlySet<string>;
}

/**
 * Makes the plan that a run asked for. May be delivered again after a crash: a run that has ended is left alone, and a
 * plan is saved once per run. When the process is closing, the run is left as it is and put back at the next start.
 */
export async function runSolve(ports: Ports, runId: string, { signal }: JobContext): Promise<void> {
  const run = await changeRun(
    ports,
    runId,
    (current) => ({ ...current, state: "running", startedAt: ports.clock.now(), progress: null, curve: [] }),
    async ({ provisional }, begun) => {
      // left by a process that died
      await provisional.forget(runId);
      return { run: begun, events: [] };
    },
  );
  if (run === null) return;
  if (run.stopRequested) return endWithoutPlan(ports, run, null);
  if (run.task.kind !== "plan") return runSearch(ports, run, run.task, signal);
  const solved = await solve(ports, run, run.task.favour, signal);
  if (signal.aborted && signal.reason === "closing") return;
  if (solved?.ok === true) await endWithPlan(ports, run, solved.value);
  else await endWithoutPlan(ports, run, solved?.error ?? null);
}

/** Null when the run was stopped before there was a first plan. */
async function solve(
  ports: Ports,
  run: SolveRun,
  favour: Concern | null,
  signal: AbortSignal,
): Promise<Result<Solved> | null> {
  const { snapshot, working, frozen } = await ports.store.read(async (repositories) => ({
    snapshot: await planningSnapshot(repositories, run.plantId),
    working: await workingPlanOf(repositories, run.plantId),
    frozen: await frozenPlanOf(repositories, run.plantId),
  }));
  if (snapshot === null) return refused(plantGone);
  const refusal = refusalOfPlant(snapshot.plant) ?? refusalOfOrders(snapshot.orders, snapshot.plant);
  if (refusal !== null) return refused(refusal);
  const { seed, maxSteps, maxMs, threads } = run.params;
  const progress = progressKeeper(ports, run);
  let provisional: ProvisionalKeeper | null = null;
  try {
    const made = assembleProblem({ ...snapshot, now: ports.clock.now() });
    const pins = frozen === null ? [] : frozenPins(made.problem, frozen);
    const assembled = { ...made, problem: withPins(made.problem, pins) };
    const aim = aimOf(assembled, { favour, working, heldOrderIds: snapshot.heldOrderIds });
    const origin = { engineVersion: ENGINE_VERSION, seed, steps: 0, bound: null };
    const keeper = provisionalKeeper(ports, run, (plan) =>
      describeProvisional(assembled, atOwnPrices(assembled, plan), origin),
    );
    provisional = keeper;
    const task: SolveTask = {
      problem: aim.problem,
      params: { seed, maxSteps, maxMs, ...aim.params },
      threads,
      onProgress: (report) => {
        progress.report(report);
        keeper.tick();
      },
      onBetterPlan: keeper.offer,
      signal,
    };
    const { result, isWeighed } = await solveOverFrozen(ports.solver, task, { given: frozen, pins });
    await keeper.settle();
    if (result.status === "cancelled") return null;
    if (result.status === "faulty-problem") return refused(problemFaulty(result.faults));
    if (result.status === "rejected") {
      for (const { rule, code, text } of result.violations)
        ports.log.error("The audit refused a plan", { rule, code, text });
      return refused(planRejected(result.violations));
    }
    const kept = await planToKeep(ports, run, keeper);
    const isAtOwnPrices = aim.problem === assembled.problem && !isWeighed && kept === null;
    const plan = isAtOwnPrices ? result.plan : atOwnPrices(assembled, kept ?? result.plan);
    const bound = isAtOwnPrices ? result.bound : knownBound(assembled);
    return ok({ plan, bound, statistics: result.statistics, assembled, heldOrderIds: snapshot.heldOrderIds });
  } catch (error) {
    ports.log.error("A planning run broke down", { runId: run.id, plantId: run.plantId }, error);
    return refused(solverFailed);
  } finally {
    await Promise.all([progress.settle(), provisional?.settle()]);
  }
}

/** The plan that a stop has named; null where it named none. */
async function planToKeep(ports: Ports, { id }: SolveRun, keeper: ProvisionalKeeper): Promise<Plan | null> {
  const current = await ports.store.read(({ runs }) => runs.get(id));
  const number = current?.keep ?? null;
  return number === null ? null : keeper.plan(number);
}

interface Aim {
  readonly problem: ProblemData;
  readonly params: Pick<SolveParams, "startFrom">;
}

interface Wished {
  readonly favour: Concern | null;
  readonly working: StoredPlan | null;
  readonly heldOrderIds: ReadonlySet<string>;
}

/**
 * The problem at the prices that the run is to go by, in which what customers were promised comes first; for calm the search
 * begins at the plan that is worked on.
 */
function aimOf(assembled: Assembled, { favour, working, heldOrderIds }: Wished): Aim {
  const problem = keepPromises(assembled.problem, heldOrderIds);
  if (favour === null) return { problem, params: {} };
  const standing = working === null ? null : planOfDocument(working.document, problem);
  const favoured = favouredProblem(problem, favour, standing);
  return { problem: favoured, params: favour === "calm" && standing !== null ? { startFrom: standing } : {} };
}

async function endWithPlan(ports: Ports, run: SolveRun, solved: Solved): Promise<void> {
  const ended = await changeRun(
    ports,
    run.id,
    (current) => ({
      ...current,
      state: current.stopRequested ? "stopped" : "done",
      endedAt: ports.clock.now(),
    }),
    async (repositories, changed) => {
      const { holds } = await repositories.holds.list(run.plantId);
      const plan = storedPlan(ports, run, { ...solved, ...planWithHolds(solved, holds) });
      const planId = await repositories.plans.insertOnce(plan);
      const here = await repositories.steps.newest(run.plantId);
      const made = { kind: "run", planId, by: run.requestedBy, at: ports.clock.now() } as const;
      await addStep(repositories, run.plantId, here, stepOnto(here, made));
      const state = changed.state === "stopped" ? "stopped" : "done";
      return {
        run: { ...changed, planId },
        events: [
          { type: "plan-saved", planId, runId: run.id },
          { type: "solve-ended", runId: run.id, state, planId },
        ],
      };
    },
  );
  if (ended !== null)
    ports.log.info("A plan was made", {
      runId: run.id,
      plantId: run.plantId,
      steps: solved.statistics.steps,
    });
  await publishPending(ports);
}

/** Ends a run that has no plan: stopped before it began (`problem` null), or failed. */
async function endWithoutPlan(ports: Ports, run: SolveRun, problem: AppError | null): Promise<void> {
  const state = problem === null ? "stopped" : "failed";
  await changeRun(
    ports,
    run.id,
    (current) => ({ ...current, state, problem, endedAt: ports.clock.now() }),
    (_, changed) =>
      Promise.resolve({
        run: changed,
        events: [{ type: "solve-ended", runId: run.id, state, planId: null }],
      }),
  );
  await publishPending(ports);
}

function storedPlan(ports: Ports, run: SolveRun, { plan, bound, statistics, assembled }: Solved): StoredPlan {
  const origin = { engineVersion: ENGINE_VERSION, seed: run.params.seed, steps: statistics.steps };
  const document = describePlan(assembled, plan, { ...origin, bound });
  return {
    id: ports.ids.next(),
    plantId: run.plantId,
    runId: run.id,
    parentId: null,
    edit: null,
    createdAt: ports.clock.now(),
    ...origin,
    summary: document.summary,
    document,
  };
}
