import type { Actor } from "./actor.ts";
import { acceptImport } from "./commands/accept-import.ts";
import { changeHours } from "./commands/change-hours.ts";
import { changeOrders } from "./commands/change-orders.ts";
import { editPlan } from "./commands/edit-plan.ts";
import { freeOrder } from "./commands/free-order.ts";
import { pinOrder } from "./commands/pin-order.ts";
import { previewImport } from "./commands/preview-import.ts";
import { putOrders } from "./commands/put-orders.ts";
import { putPlant } from "./commands/put-plant.ts";
import { choosePlan } from "./commands/choose-plan.ts";
import { requestRemedies, requestTradeOff } from "./commands/request-findings.ts";
import { requestSolve } from "./commands/request-solve.ts";
import { publishPlan } from "./commands/publish-plan.ts";
import { restorePlan } from "./commands/restore-plan.ts";
import { stopSolve } from "./commands/stop-solve.ts";
import { redoStep, undoStep } from "./commands/undo-step.ts";
import { recoverRuns } from "./jobs/recover-runs.ts";
import { runSolve } from "./jobs/run-solve.ts";
import type { JobHandlers } from "./ports/job-queue.ts";
import type { Ports } from "./ports/ports.ts";
import { forgetOldBookSteps } from "./jobs/forget-old-book-steps.ts";
import { forgetOldImports } from "./jobs/forget-old-imports.ts";
import { askAlternatives } from "./promises/find-alternatives.ts";
import { askPromise } from "./promises/ask-promise.ts";
import { askBatch, askBatchFile, exportBatch } from "./promises/ask-batch.ts";
import { askSureness } from "./promises/ask-sureness.ts";
import { DeskKeeper } from "./promises/desk-keeper.ts";
import { expireAllHolds } from "./promises/end-holds.ts";
import { getHolds } from "./promises/get-holds.ts";
import { holdCapacity } from "./promises/hold-capacity.ts";
import { orderHold } from "./promises/order-hold.ts";
import { PromiseQueue } from "./promises/promise-queue.ts";
import { releaseHold } from "./promises/release-hold.ts";
import { adoptScenario } from "./scenarios/adopt-scenario.ts";
import { listScenarios } from "./scenarios/list-scenarios.ts";
import { requestHelp, requestScenarios } from "./scenarios/request-scenarios.ts";
import { deleteScenario, rewriteScenario, writeScenario } from "./scenarios/write-scenarios.ts";
import { exportLoad } from "./queries/export-load.ts";
import { exportOrderBook } from "./queries/export-order-book.ts";
import { exportPlan } from "./queries/export-plan.ts";
import { exportOrders, exportPlant } from "./queries/export-records.ts";
import { getComparison } from "./queries/get-comparison.ts";
import { getLoadFindings } from "./queries/get-load-findings.ts";
import { getLoadOrders } from "./queries/get-load-orders.ts";
import { getLoad } from "./queries/get-load.ts";
import { getOrderBook } from "./queries/get-order-book.ts";
import { getPins } from "./queries/get-pins.ts";
import { getPlan } from "./queries/get-plan.ts";
import { getPlanProblem } from "./queries/get-plan-problem.ts";
import { getPlant } from "./queries/get-plant.ts";
import { getProvisional } from "./queries/get-provisional.ts";
import { getRates } from "./queries/get-rates.ts";
import { getRun } from "./queries/get-run.ts";
import { getWorkingPlan } from "./queries/get-working-plan.ts";
import { listBookSteps } from "./queries/list-book-steps.ts";
import { listPlans } from "./queries/list-plans.ts";
import { listSteps } from "./queries/list-steps.ts";
import { listPublications } from "./queries/list-publications.ts";
import { listPlants } from "./queries/list-plants.ts";
import { watchPlant } from "./queries/watch-plant.ts";
import { type PlantInput, type UseCase, guarded } from "./use-case.ts";

/** Everything the planner can do, as functions; the shells (HTTP, worker, command line) call nothing else. */
export type Application = ReturnType<typeof createApplication>;

/** Joins the use cases to what they need from the outside. Holds no state of its own but the desks that it keeps open for promises. */
export function createApplication(ports: Ports) {
  const guard = <Input extends PlantInput, Output>(useCase: UseCase<Input, Output>) =>
    guarded(ports, useCase);
  const desks = new DeskKeeper();
  const queue = new PromiseQueue();
  return {
    commands: {
      putPlant: guard(putPlant),
      putOrders: guard(putOrders),
      changeOrders: guard(changeOrders),
      pinOrder: guard(pinOrder),
      freeOrder: guard(freeOrder),
      previewImport: guard(previewImport),
      acceptImport: guard(acceptImport),
      requestSolve: guard(requestSolve),
      requestRemedies: guard(requestRemedies),
      requestTradeOff: guard(requestTradeOff),
      stopSolve: guard(stopSolve),
      editPlan: guard(editPlan),
      changeHours: guard(changeHours),
      undoStep: guard(undoStep),
      redoStep: guard(redoStep),
      restorePlan: guard(restorePlan),
      choosePlan: guard(choosePlan),
      publishPlan: guard(publishPlan),
      holdCapacity: guard(holdCapacity(desks, queue)),
      releaseHold: guard(releaseHold(desks, queue)),
      orderHold: guard(orderHold(desks, queue)),
      writeScenario: guard(writeScenario),
      rewriteScenario: guard(rewriteScenario),
      deleteScenario: guard(deleteScenario),
      requestScenarios: guard(requestScenarios),
      requestHelp: guard(requestHelp),
      adoptScenario: guard(adoptScenario),
    },
    queries: {
      listPlants: (actor: Actor) => listPlants(ports, actor),
      getPlant: guard(getPlant),
      getRates: guard(getRates),
      getOrderBook: guard(getOrderBook),
      listBookSteps: guard(listBookSteps),
      getLoad: guard(getLoad),
      getLoadOrders: guard(getLoadOrders),
      getLoadFindings: guard(getLoadFindings),
      getPins: guard(getPins),
      getRun: guard(getRun),
      getProvisional: guard(getProvisional),
      listPlans: guard(listPlans),
      getPlan: guard(getPlan),
      getWorkingPlan: guard(getWorkingPlan),
      listSteps: guard(listSteps),
      listPublications: guard(listPublications),
      getComparison: guard(getComparison),
      getPlanProblem: guard(getPlanProblem),
      askPromise: guard(askPromise(desks)),
      askAlternatives: guard(askAlternatives(desks)),
      askSureness: guard(askSureness(desks)),
      askBatch: guard(askBatch(desks)),
      askBatchFile: guard(askBatchFile(desks)),
      exportBatch: guard(exportBatch(desks)),
      getHolds: guard(getHolds(desks)),
      listScenarios: guard(listScenarios),
      exportOrders: guard(exportOrders),
      exportPlant: guard(exportPlant),
      exportPlan: guard(exportPlan),
      exportOrderBook: guard(exportOrderBook),
      exportLoad: guard(exportLoad),
      watchPlant: guard(watchPlant),
    },
    /** Handlers of queued jobs, for whoever consumes the queue. */
    jobs: {
      "run-solve": ({ runId }, context) => runSolve(ports, runId, context),
    } satisfies JobHandlers,
    /** What whoever runs jobs calls at start-up and every minute. */
    upkeep: async (): Promise<void> => {
      await recoverRuns(ports);
      await expireAllHolds(ports, desks.openAsIs);
      await forgetOldImports(ports);
      await forgetOldBookSteps(ports);
    },
  };
}
