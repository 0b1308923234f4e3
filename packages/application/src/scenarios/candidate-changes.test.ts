import { Order, Plant } from "@formweek/capacity-model";
import { demoOrders, demoPlant } from "@formweek/demo-plant";
import { solve } from "@formweek/scheduler";
import { describe, expect, it } from "vitest";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { assembleProblem } from "../planning/assemble-problem.ts";
import { latenessOf } from "../planning/plan-figures.ts";
import { planWindow } from "../planning/plan-window.ts";
import type { PlanningSnapshot } from "../planning/planning-snapshot.ts";
import { candidateChanges } from "./candidate-changes.ts";
import { scenarioFaults } from "./scenario-faults.ts";
import type { ScenarioGround } from "./scenario-ground.ts";
import type { PlanOfInputs } from "./turned-orders.ts";

const plant = Plant.parse(demoPlant("calm"));

/** Some orders of the demo, planned; those named are due so early that they are late. */
function planned(
  count: number,
  isLate: (place: number) => boolean,
): PlanOfInputs & { readonly ground: ScenarioGround } {
  const early = Date.UTC(2026, 10, 30, 12) / 1000;
  const orders = demoOrders("calm")
    .slice(0, count)
    .map((order, place) =>
      Order.parse({ ...order, dueAt: isLate(place) ? early : order.dueAt + 14 * 86_400 }),
    );
  const snapshot: PlanningSnapshot = {
    plant,
    orders,
    bookRevision: 1,
    heldOrderIds: new Set(),
    stockShares: [],
    pins: [],
  };
  const assembled = assembleProblem({ ...snapshot, now: 0 });
  const result = solve(assembled.problem, { seed: 1, maxSteps: 200, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error("the demo can be planned");
  return {
    assembled,
    plan: result.plan,
    ground: { snapshot, horizon: planWindow(plant, 0), frozenRuns: [] },
  };
}

describe("changes that may help", () => {
  it("are possible ones of what late orders wait for, each once, no more than asked for, some of them a later due date", () => {
    const { ground, ...made } = planned(14, (place) => place < 8);
    const { problem } = made.assembled;
    for (const most of [12, 5]) {
      const changes = candidateChanges(made, ground, most);
      expect(changes.length).toBeLessThanOrEqual(most);
      expect(changes.length).toBeGreaterThan(3);
      expect(new Set(changes.map((change) => JSON.stringify(change))).size).toBe(changes.length);
      for (const change of changes) expect(scenarioFaults([change], ground)).toEqual([]);
      const later = changes.flatMap((change) => (change.kind === "change order" ? [change] : []));
      expect(later.length).toBeGreaterThan(0);
      expect(later.length).toBeLessThanOrEqual(3);
      for (const { orderId, dueAt } of later) {
        const late = latenessOf(problem, made.plan, orderId) ?? 0;
        const job = problem.jobs.find((each) => each.orderId === orderId);
        expect(late).toBeGreaterThan(0);
        // just met: on the next whole hour
        expect((dueAt ?? 0) - ((job?.dueAt ?? 0) + late)).toBeLessThan(3600);
      }
    }
  });

  it("are shifts and copies where no order is late: of lines that run and moulds that are mounted", () => {
    const { ground, ...made } = planned(60, () => false);
    const { segments } = made.plan;
    const changes = candidateChanges(made, ground, 12);
    expect(changes.length).toBeGreaterThan(0);
    const runs = new Set(segments.flatMap((each) => (each.kind === "run" ? [each.lineId] : [])));
    for (const change of changes) {
      expect(scenarioFaults([change], ground)).toEqual([]);
      if (change.kind === "add shift") expect(runs.has(change.shift.lineIds[0] ?? "")).toBe(true);
      else expect(change).toMatchObject({ kind: "more copies", more: 1 });
    }
  });
});
