import { Plant } from "@formweek/capacity-model";
import { demoOrders, demoPlant } from "@formweek/demo-plant";
import { describe, expect, it } from "vitest";
import { planWindow } from "../planning/plan-window.ts";
import type { PlanningSnapshot } from "../planning/planning-snapshot.ts";
import type { ScenarioChange } from "./scenario-change.ts";
import { scenarioFaults } from "./scenario-faults.ts";
import type { ScenarioGround } from "./scenario-ground.ts";

const plant = Plant.parse(demoPlant("calm"));
const orders = demoOrders("calm");
const [first, pinned, held] = orders.map(({ id }): string => id) as [string, string, string];
const snapshot: PlanningSnapshot = {
  plant,
  orders,
  bookRevision: 1,
  heldOrderIds: new Set([held]),
  stockShares: [],
  pins: [{ orderId: pinned, lineId: "L1", startAt: null, sequence: null }],
};
const horizon = planWindow(plant, 0);
const hour = (hours: number): number => horizon.start + hours * 3600;
const frozenRuns = [{ orderId: "F-1", lineId: "L2", start: hour(2), end: hour(10) }];
const ground: ScenarioGround = {
  snapshot: {
    ...snapshot,
    orders: [...orders, { ...orders[0]!, id: "F-1" as (typeof orders)[number]["id"] }],
  },
  horizon,
  frozenRuns,
};

const [mould] = plant.moulds;
const [team] = plant.setterTeams;
if (mould === undefined || team === undefined) throw new Error("the demo has moulds and teams");
const extraTeam = {
  kind: "another team",
  likeTeamId: team.id,
  name: "Third",
  from: hour(0),
  to: hour(8),
} as const;
const { id: _, ...terms } = orders[0]!;
const rush = (part: object = {}): ScenarioChange => ({
  kind: "rush order",
  order: { id: "R-1", ...terms, ...part },
});
const close = (lineId: string, from: string, to: string): ScenarioChange => ({
  kind: "close line",
  closure: { lineId, from, to, reason: "Bearing" },
});
const fits = plant.provenRates[0]!;
const rate = (part: object = {}): ScenarioChange => ({
  kind: "cycle rate",
  lineId: fits.lineId,
  mouldId: fits.mouldId,
  cyclesPerMin: 10,
  ...part,
});

/** What stands against it, and what its words name. */
interface Said {
  readonly kind: string;
  readonly named: string;
}

describe("against a change of a scenario", () => {
  it.each<readonly [string, ScenarioChange]>([
    ["a closed line", close("L1", "2026-12-01T06:00", "2026-12-02T06:00")],
    ["a closed line beside a frozen run", close("L2", "2026-11-30T16:00", "2026-12-01T06:00")],
    ["another copy", { kind: "more copies", mouldId: mould.id, more: 1 }],
    ["another team", extraTeam],
    ["a cancelled order", { kind: "cancel order", orderId: first }],
    ["a rush order", rush()],
    ["other pieces", { kind: "change order", orderId: first, pieces: 5, dueAt: null }],
    [
      "another due date, even of a pinned order",
      { kind: "change order", orderId: pinned, pieces: null, dueAt: hour(99) },
    ],
    ["another rate", rate()],
  ])("nothing stands: %s", (_name, change) => {
    expect(scenarioFaults([change], ground)).toEqual([]);
  });

  it.each<readonly [string, ScenarioChange, string, Said]>([
    [
      "an unknown line",
      close("L99", "2026-12-01T06:00", "2026-12-02T06:00"),
      "closure.lineId",
      { kind: "no such line", named: "L99" },
    ],
    [
      "a reversed spell",
      close("L1", "2026-12-02T06:00", "2026-12-01T06:00"),
      "closure.to",
      { kind: "ends before start", named: "06:00" },
    ],
    [
      "a spell after the plan",
      close("L1", "2027-06-01T06:00", "2027-06-02T06:00"),
      "closure.from",
      { kind: "after plan", named: "plan ends" },
    ],
    [
      "a frozen run's line",
      close("L2", "2026-11-30T15:59", "2026-12-01T06:00"),
      "closure.from",
      { kind: "run frozen", named: "F-1" },
    ],
    [
      "an unknown mould",
      { kind: "more copies", mouldId: "nothing", more: 1 },
      "mouldId",
      { kind: "unknown reference", named: "nothing" },
    ],
    [
      "an unknown team",
      { ...extraTeam, likeTeamId: "nobody" },
      "likeTeamId",
      { kind: "unknown reference", named: "nobody" },
    ],
    [
      "a team without a name",
      { ...extraTeam, name: " " },
      "name",
      { kind: "value too small", named: "name of 1 to 120" },
    ],
    [
      "a team for no time",
      { ...extraTeam, to: hour(0) + 59 },
      "to",
      { kind: "ends before start", named: "not after its start" },
    ],
    [
      "a team that is over",
      { ...extraTeam, from: hour(-9), to: hour(0) },
      "to",
      { kind: "over before plan", named: "over" },
    ],
    [
      "a team after the plan",
      { ...extraTeam, from: horizon.end, to: horizon.end + 60 },
      "from",
      { kind: "after plan", named: "plan ends" },
    ],
    [
      "a team for years",
      { ...extraTeam, to: hour(24 * 367) },
      "to",
      { kind: "spell too long", named: "366" },
    ],
    [
      "an unknown order",
      { kind: "cancel order", orderId: "X" },
      "orderId",
      { kind: "unknown reference", named: "X" },
    ],
    [
      "an order that is held for a customer",
      { kind: "cancel order", orderId: held },
      "orderId",
      { kind: "unknown reference", named: held },
    ],
    [
      "a pinned order cancelled",
      { kind: "cancel order", orderId: pinned },
      "orderId",
      { kind: "order pinned", named: pinned },
    ],
    [
      "a frozen order cancelled",
      { kind: "cancel order", orderId: "F-1" },
      "orderId",
      { kind: "run frozen", named: "L2" },
    ],
    ["a rush order's number taken", rush({ id: first }), "order.id", { kind: "number taken", named: first }],
    ["a hold's number taken", rush({ id: held }), "order.id", { kind: "number taken", named: held }],
    [
      "a rush order of nothing",
      rush({ productId: "nothing" }),
      "order.productId",
      { kind: "unknown reference", named: "nothing" },
    ],
    [
      "a rush order of no pieces",
      rush({ pieces: 0 }),
      "order.pieces",
      { kind: "value too small", named: "0" },
    ],
    [
      "a rush order that starts too late",
      rush({ earliestStartAt: terms.dueAt + 1 }),
      "order.earliestStartAt",
      { kind: "start after due", named: "due" },
    ],
    [
      "no pieces",
      { kind: "change order", orderId: first, pieces: 0, dueAt: null },
      "pieces",
      { kind: "value too small", named: "0" },
    ],
    [
      "half a piece",
      { kind: "change order", orderId: first, pieces: 1.5, dueAt: null },
      "pieces",
      { kind: "value of wrong kind", named: "1.5" },
    ],
    [
      "absurd pieces",
      { kind: "change order", orderId: first, pieces: 1e12, dueAt: null },
      "pieces",
      { kind: "value too large", named: "1000000000" },
    ],
    [
      "no other order",
      { kind: "change order", orderId: first, pieces: null, dueAt: null },
      "pieces",
      { kind: "order left as it is", named: first },
    ],
    [
      "another due date of an unknown order",
      { kind: "change order", orderId: "X", pieces: null, dueAt: 9 },
      "orderId",
      { kind: "unknown reference", named: "X" },
    ],
    [
      "a rate of an unknown line",
      rate({ lineId: "L99" }),
      "lineId",
      { kind: "unknown reference", named: "L99" },
    ],
    [
      "a rate of an unknown mould",
      rate({ mouldId: "M" }),
      "mouldId",
      { kind: "unknown reference", named: "M" },
    ],
    ["no rate", rate({ cyclesPerMin: 0 }), "cyclesPerMin", { kind: "rate out of range", named: "0 cycles" }],
    [
      "a rate beyond the mould",
      rate({ cyclesPerMin: 1e4 }),
      "cyclesPerMin",
      { kind: "rate out of range", named: "10000" },
    ],
  ])("stands by name: %s", (_name, change, path, said) => {
    const faults = scenarioFaults(
      [rate({ cyclesPerMin: 9, mouldId: mould.id, lineId: "L9" }), change],
      ground,
    ).filter((fault) => fault.path.startsWith("changes.1."));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ path: `changes.1.${path}`, cause: { kind: said.kind } });
    expect(`${faults[0]?.problem ?? ""} ${faults[0]?.remedy ?? ""}`).toContain(said.named);
  });

  it("stands a mould that makes nothing on a line", () => {
    const lines = plant.lines.map((line) =>
      line.id === fits.lineId ? { ...line, maxMouldMassKg: 1 } : line,
    );
    const weak = { ...ground, snapshot: { ...ground.snapshot, plant: { ...plant, lines } } };
    expect(scenarioFaults([rate()], weak)).toMatchObject([
      { path: "changes.0.mouldId", cause: { kind: "mould not on line", lineId: fits.lineId } },
    ]);
  });

  it("stand more copies than a mould can have, and says how many are left", () => {
    const copies: ScenarioChange = { kind: "more copies", mouldId: mould.id, more: 5 };
    const moulds = plant.moulds.map((each) => (each.id === mould.id ? { ...each, copies: 18 } : each));
    const full = { ...ground, snapshot: { ...ground.snapshot, plant: { ...plant, moulds } } };
    const [fault] = scenarioFaults([copies], full);
    expect(fault).toMatchObject({
      path: "changes.0.more",
      cause: { kind: "too many copies", copies: 18, most: 20 },
    });
    expect(fault?.remedy).toContain("2");
  });

  it("stands another change of the same, whatever both do to it; each change is held against those before it", () => {
    const pairs: readonly (readonly [ScenarioChange, ScenarioChange, string])[] = [
      [
        { kind: "more copies", mouldId: mould.id, more: 1 },
        { kind: "more copies", mouldId: mould.id, more: 2 },
        "mouldId",
      ],
      [
        { kind: "cancel order", orderId: first },
        { kind: "change order", orderId: first, pieces: 1, dueAt: null },
        "orderId",
      ],
      [rush(), rush({ pieces: 1 }), "order.id"],
      [rate(), rate({ cyclesPerMin: 9 }), "lineId"],
      [extraTeam, extraTeam, "name"],
    ];
    for (const [one, other, field] of pairs)
      expect(scenarioFaults([one, other], ground)).toMatchObject([
        { path: `changes.1.${field}`, cause: { kind: "changed twice", first: 1 } },
      ]);
    const spells = [
      close("L1", "2026-12-01T06:00", "2026-12-02T06:00"),
      close("L1", "2026-12-01T22:00", "2026-12-03T06:00"),
    ];
    expect(scenarioFaults(spells, ground)).toMatchObject([
      { path: "changes.1.closure.from", cause: { kind: "line closed already" } },
    ]);
  });
});
