import type { HelpFindings, PlanFigures, Scenario, ScenarioOutcome } from "@formweek/contracts";
import { describe, expect, it } from "vitest";
import {
  comparisonOf,
  helpSeconds,
  rankedChanges,
  scenarioSeconds,
  stateOf,
  turnOf,
} from "./scenario-rows.ts";

const figures = (lateOrders: number, cost: number): PlanFigures => ({
  cost,
  lateOrders,
  unplannedOrders: 0,
  lateSeconds: lateOrders * 3600,
  changeSeconds: 7200,
  overtimeSeconds: 0,
});

const outcome = (more: Partial<ScenarioOutcome>): ScenarioOutcome => ({
  runId: "r1",
  at: "2026-11-30T05:00:00Z",
  isCurrent: true,
  standing: figures(4, 1000),
  without: figures(3, 900),
  with: figures(1, 950),
  turned: [],
  ...more,
});

const scenario = (id: string, worked: ScenarioOutcome | null): Scenario => ({
  id,
  revision: 1,
  name: id,
  changes: [{ kind: "more copies", mouldId: "M1", more: 1 }],
  by: "local",
  at: "2026-11-29T05:00:00Z",
  adopted: null,
  outcome: worked,
});

describe("scenarios side by side", () => {
  it("are held against the plan without changes, never against the plan as it stands", () => {
    const comparison = comparisonOf([scenario("a", outcome({})), scenario("b", null)]);
    expect(comparison?.columns.map(({ kind }) => kind)).toEqual(["standing", "without", "scenario"]);
    const late = comparison?.rows.find(({ name }) => name === "lateOrders")?.cells;
    expect(late).toEqual([
      { value: 4, share: 1, by: null },
      { value: 3, share: 0.75, by: null },
      { value: 1, share: 0.25, by: -2 },
    ]);
    const cost = comparison?.rows.find(({ name }) => name === "cost")?.cells;
    expect(cost?.map(({ by }) => by)).toEqual([null, null, 50]);
  });

  it("of several runs keep each its own plan without changes, and say so", () => {
    const later = outcome({ runId: "r2", at: "2026-11-30T06:00:00Z", without: figures(2, 800) });
    const comparison = comparisonOf([scenario("a", outcome({})), scenario("b", later)]);
    expect(comparison?.isOfOneRun).toBe(false);
    const late = comparison?.rows.find(({ name }) => name === "lateOrders")?.cells;
    expect(late?.map(({ by }) => by)).toEqual([null, null, -2, -1]);
    expect(late?.[1]?.value).toBe(2);
  });

  it("have no bar where a whole row is nothing, and no column for a plan that never stood", () => {
    const comparison = comparisonOf([scenario("a", outcome({ standing: null }))]);
    expect(comparison?.columns.map(({ kind }) => kind)).toEqual(["without", "scenario"]);
    const overtime = comparison?.rows.find(({ name }) => name === "overtimeSeconds")?.cells;
    expect(overtime?.map(({ share }) => share)).toEqual([0, 0]);
  });

  it("are nothing before one has been worked out", () => {
    expect(comparisonOf([scenario("a", null)])).toBeNull();
  });
});

describe("what is known of a scenario", () => {
  it("is how far it has been worked out, and that it was adopted before all else", () => {
    expect(stateOf(scenario("a", null))).toBe("not worked out");
    expect(stateOf(scenario("a", outcome({})))).toBe("worked out");
    expect(stateOf(scenario("a", outcome({ isCurrent: false })))).toBe("changed since");
    const adopted = { by: "local", at: "2026-11-30T07:00:00Z" };
    expect(stateOf({ ...scenario("a", outcome({ isCurrent: false })), adopted })).toBe("adopted");
  });
});

describe("an order that changes sides", () => {
  it.each([
    ["late", "on time", "better"],
    ["unplanned", "late", "better"],
    ["on time", "late", "worse"],
    ["late", "unplanned", "worse"],
    ["covered by stock", "partly planned", "worse"],
    [null, "late", "comes"],
    ["late", null, "goes"],
  ] as const)("from %s to %s gets %s", (from, to, turn) => {
    expect(turnOf({ from, to })).toBe(turn);
  });
});

describe("changes that help", () => {
  it("are measured by the most that one of them saves", () => {
    const change = { kind: "more copies", mouldId: "M1", more: 1 } as const;
    const findings: HelpFindings = {
      kind: "help",
      without: { ...figures(4, 1000), unplannedOrders: 1 },
      tried: 3,
      changes: [
        { change, with: figures(1, 600), turned: [] },
        { change, with: { ...figures(3, 800), unplannedOrders: 0 }, turned: [] },
        { change, with: { ...figures(5, 900), unplannedOrders: 1 }, turned: [] },
      ],
    };
    expect(
      rankedChanges(findings).map(({ ordersSaved, costSaved, ordersShare, costShare }) => [
        ordersSaved,
        costSaved,
        ordersShare,
        costShare,
      ]),
    ).toEqual([
      [4, 400, 1, 1],
      [2, 200, 0.5, 0.5],
      [-1, 100, 0, 0.25],
    ]);
  });
});

describe("the time of a run", () => {
  it("grows with the plans that it makes, and with how thorough they are", () => {
    expect(scenarioSeconds(2, "quick")).toBe((scenarioSeconds(1, "quick") * 3) / 2);
    expect(scenarioSeconds(1, "thorough")).toBeGreaterThan(scenarioSeconds(1, "quick"));
    expect(helpSeconds("thorough")).toBeGreaterThan(helpSeconds("quick"));
  });
});
