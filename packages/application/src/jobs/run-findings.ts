import type { AppError } from "../errors.ts";
import type { PlantEventBody } from "../events.ts";
import { planNotFound } from "../not-found.ts";
import { assembleForPlan } from "../planning/assemble-for-plan.ts";
import { assembleProblem } from "../planning/assemble-problem.ts";
import type { Assembled } from "../planning/assembled.ts";
import { frozenPins, frozenPinsIn, withPins } from "../planning/frozen-pins.ts";
import { heldProblem } from "../planning/favoured-problem.ts";
import { findTradeOff } from "../planning/find-trade-off.ts";
import { lookForRemedies } from "../planning/look-for-remedies.ts";
import { planFigures } from "../planning/plan-figures.ts";
import { sketchOf } from "../planning/run-findings.ts";
import type { Ports } from "../ports/ports.ts";
import type { RunTask, SolveRun } from "../ports/run-repository.ts";
import { publishPending } from "../publish-pending.ts";
import { type Result, ok, refused } from "../result.ts";
import { refusalOfOrders, refusalOfPlant } from "../commands/record-faults.ts";
import { changeRun } from "./change-run.ts";
import { progressKeeper } from "./progress-keeper.ts";
import { searchHelp } from "./run-help.ts";
import { searchScenarios } from "./run-scenarios.ts";
import { type Found, type Search, findingsAlone, recordsOf, standingPlan } from "./search-records.ts";
import { planRejected, problemFaulty, solverFailed } from "./solve-refusals.ts";

/** Changes of plant or order that are tried for one late order. */
const MOST_CHANGES = 8;

type SearchTask = Exclude<RunTask, { kind: "plan" }>;

/**
 * Finds out what a run was asked for beside a plan. As with planning, a run that is stopped keeps what it has found so far, and
 * one whose process is closing begins anew at the next start.
 */
export async function runSearch(
  ports: Ports,
  run: SolveRun,
  task: SearchTask,
  signal: AbortSignal,
): Promise<void> {
  const progress = progressKeeper(ports, run);
  const found = await search({ ports, run, progress, signal }, task)
    .catch((error: unknown) => {
      ports.log.error("A search broke down", { runId: run.id, plantId: run.plantId }, error);
      return refused(solverFailed);
    })
    .finally(progress.settle);
  if (signal.aborted && signal.reason === "closing") return;
  await endSearch(ports, run, found);
}

async function endSearch(ports: Ports, run: SolveRun, found: Result<Found>): Promise<void> {
  const problem: AppError | null = found.ok ? null : found.error;
  await changeRun(
    ports,
    run.id,
    (current) => ({
      ...current,
      state: problem !== null ? "failed" : current.stopRequested ? "stopped" : "done",
      findings: found.ok ? found.value.findings : null,
      problem,
      endedAt: ports.clock.now(),
    }),
    async ({ scenarios }, changed) => {
      const state = changed.state === "failed" || changed.state === "stopped" ? changed.state : "done";
      let kept = 0;
      for (const [id, outcome] of found.ok ? found.value.outcomes : [])
        // one that was deleted meanwhile needs none
        if (await scenarios.putOutcome(run.plantId, id, outcome)) kept++;
      const events: readonly PlantEventBody[] = [
        ...(kept === 0 ? [] : [{ type: "scenarios-changed" } as const]),
        { type: "solve-ended", runId: run.id, state, planId: null },
      ];
      return { run: changed, events };
    },
  );
  await publishPending(ports);
}

function search(search: Search, task: SearchTask): Promise<Result<Found>> {
  switch (task.kind) {
    case "remedies":
      return searchRemedies(search, task);
    case "trade-off":
      return searchTradeOff(search);
    case "scenarios":
      return searchScenarios(search, task);
    case "help":
      return searchHelp(search);
  }
}

async function searchRemedies(
  search: Search,
  { planId, orderId }: Extract<SearchTask, { kind: "remedies" }>,
): Promise<Result<Found>> {
  const records = await recordsOf(search, planId);
  if (!records.ok) return records;
  const { snapshot, plan: stored, frozen } = records.value;
  if (stored === null) return refused(planNotFound(planId));
  const made = assembleForPlan(snapshot, stored.document);
  if (!made.ok) return made;
  const pins = frozen === null ? [] : frozenPinsIn(made.value.problem, frozen, stored.document);
  const assembled: Assembled = { ...made.value, problem: withPins(made.value.problem, pins) };
  const plan = standingPlan(assembled, stored);
  if (!plan.ok) return plan;
  const { ports, run, progress, signal } = search;
  const { seed, maxSteps, maxMs } = run.params;
  const trials = MOST_CHANGES + 1;
  const params = {
    seed,
    maxSteps: maxSteps === null ? null : Math.ceil(maxSteps / trials),
    maxMs: maxMs === null ? null : maxMs / trials,
  };
  const begun = ports.clock.now();
  const onTried = (done: number, all: number, share: number): void =>
    progress.report({
      share: (done + share) / all,
      steps: done,
      elapsedMs: (ports.clock.now() - begun) * 1000,
      bestTotal: plan.value.objective.total,
      lateOrders: stored.document.summary.late,
    });
  const ask = { assembled, plan: plan.value, orderId, most: MOST_CHANGES, params };
  const looked = await lookForRemedies(ports.solver, ask, { signal, onTried });
  const { inputHash, problem } = assembled;
  const findings = { kind: "remedies", planId, orderId, inputHash, at: problem.horizon.start } as const;
  return ok(findingsAlone({ ...findings, ...looked }));
}

async function searchTradeOff(search: Search): Promise<Result<Found>> {
  const records = await recordsOf(search, null);
  if (!records.ok) return records;
  const { snapshot, plan: working, frozen } = records.value;
  const refusal = refusalOfPlant(snapshot.plant) ?? refusalOfOrders(snapshot.orders, snapshot.plant);
  if (refusal !== null) return refused(refusal);
  const { ports, run, progress, signal } = search;
  const at = ports.clock.now();
  const made = assembleProblem({ ...snapshot, now: at });
  const pins = frozen === null ? [] : frozenPins(made.problem, frozen);
  const assembled: Assembled = { ...made, problem: withPins(made.problem, pins) };
  const standing = working === null ? null : standingPlan(assembled, working);
  if (standing?.ok === false) return standing;
  const { problem: plain, inputHash } = assembled;
  const problem = standing === null ? plain : heldProblem(plain, standing.value);
  const { seed, maxSteps, maxMs, threads } = run.params;
  // from the plan that stands on: what is frozen there is in place from the first
  const onward = standing === null ? {} : { startFrom: standing.value };
  const traded = await findTradeOff(
    ports.solver,
    { problem, params: { seed, maxSteps, maxMs, ...onward }, threads },
    { signal, onProgress: progress.report },
  );
  switch (traded.status) {
    case "cancelled":
      return ok(findingsAlone(null));
    case "faulty-problem":
      return refused(problemFaulty(traded.faults));
    case "rejected":
      return refused(planRejected(traded.violations));
    case "traded":
      return ok(
        findingsAlone({
          kind: "trade-off",
          inputHash,
          at,
          criteria: traded.criteria,
          plans: traded.plans.map(({ plan, values, leastIn }) => ({
            figures: planFigures(problem, plan),
            values,
            leastIn,
            sketch: sketchOf(plan),
          })),
        }),
      );
  }
}
