import type { ScenarioChange } from "@formweek/contracts";
import { describe, expect, it } from "vitest";
import { madeOrder } from "../fixtures/made-order.ts";
import { madePlan } from "../fixtures/made-plan.ts";
import { madePlant } from "../fixtures/made-plant.ts";
import { boardPlan } from "./board-plan.ts";
import {
  changeKinds,
  draftOfChange,
  freshChange,
  nameOfWords,
  readChange,
  type ChangeDraft,
  type ChangeGround,
} from "./scenario-draft.ts";
import { scenarioExamples } from "./scenario-examples.ts";
import { zoneClock } from "./zone-clock.ts";

const ground: ChangeGround = {
  plan: boardPlan("P1", madePlan({ lines: 2, runsPerLine: 12, seed: 7 })),
  plant: madePlant(),
  clock: zoneClock("Europe/Berlin"),
  unnamed: { shift: "Added shift", team: "Extra team" },
};

const shift = {
  date: "2026-12-05",
  name: "Early",
  start: "06:00",
  end: "14:00",
  breaks: [{ start: "09:00", end: "09:30" }],
  lineIds: ["L01"],
  teamIds: ["S1"],
  operators: [{ poolId: "B1", heads: 1.5 }],
};

const written: readonly ScenarioChange[] = [
  {
    kind: "close line",
    closure: { lineId: "L01", from: "2026-12-01T06:00", to: "2026-12-03T14:00", reason: "bearing" },
  },
  { kind: "add shift", shift },
  { kind: "add shift", shift: { ...shift, operators: [] } },
  { kind: "more copies", mouldId: "C75-24", more: 2 },
  {
    kind: "another team",
    likeTeamId: "S1",
    name: "Team C",
    from: "2026-12-01T05:00:00Z",
    to: "2026-12-01T13:00:00Z",
  },
  { kind: "cancel order", orderId: "70112" },
  { kind: "rush order", order: madeOrder({ id: "R1", productId: "C75-white", weight: 2.5 }) },
  { kind: "change order", orderId: "70112", pieces: 120_000, dueAt: null },
  { kind: "change order", orderId: "70112", pieces: null, dueAt: "2026-12-04T11:00:00Z" },
  { kind: "cycle rate", lineId: "L02", mouldId: "T180-8", cyclesPerMin: 21.5 },
];

describe("a change in its form", () => {
  it.each(written)("comes out of it as it went in: %j", (change) => {
    expect(readChange(draftOfChange(change, ground), ground)).toEqual({ kind: "read", change });
  });

  it("takes a mould by its name, and numbers as they are typed in either language", () => {
    const copies = { kind: "more copies", mouldId: "cup 75 24 cavities", more: " 2 " } as const;
    expect(readChange(copies, ground)).toEqual({
      kind: "read",
      change: { kind: "more copies", mouldId: "C75-24", more: 2 },
    });
    const rate: ChangeDraft = { kind: "cycle rate", lineId: "L01", mouldId: "T180-8", cyclesPerMin: "24,5" };
    expect(readChange(rate, ground)).toMatchObject({ change: { cyclesPerMin: 24.5 } });
  });

  it.each<readonly [ChangeDraft, readonly string[]]>([
    [
      { kind: "close line", lineId: "L01", from: "", to: "2026-02-30T06:00", reason: " " },
      ["from", "to", "reason"],
    ],
    [{ kind: "more copies", mouldId: "no such", more: "6" }, ["mouldId", "more"]],
    [{ kind: "more copies", mouldId: "C75-24", more: "0" }, ["more"]],
    [{ kind: "another team", likeTeamId: "S1", name: "", from: "2026-12-01T06:00", to: "" }, ["name", "to"]],
    [{ kind: "cancel order", orderId: " " }, ["orderId"]],
    [{ kind: "change order", orderId: "70112", pieces: "", dueAt: "" }, ["pieces"]],
    [{ kind: "change order", orderId: "", pieces: "1.5", dueAt: "" }, ["orderId", "pieces"]],
    [{ kind: "cycle rate", lineId: "L01", mouldId: "C75-24", cyclesPerMin: "fast" }, ["cyclesPerMin"]],
  ])("names what cannot be read of %j", (draft, fields) => {
    expect(readChange(draft, ground)).toEqual({ kind: "faulty", fields });
  });

  it("is opened with what can be guessed, and asks for the rest", () => {
    const asked = Object.fromEntries(
      changeKinds.map((kind) => {
        const reading = readChange(freshChange(kind, ground), ground);
        return [kind, reading.kind === "read" ? [] : reading.fields];
      }),
    );
    expect(asked).toEqual({
      "add shift": [],
      "close line": ["reason"],
      "more copies": ["mouldId"],
      "another team": [],
      "cycle rate": ["mouldId", "cyclesPerMin"],
      "change order": ["pieces", "orderId"],
      "rush order": expect.arrayContaining(["id", "productId", "pieces", "dueAt"]) as unknown,
      "cancel order": ["orderId"],
    });
  });

  it("has a name of its own no longer than names may be", () => {
    expect(nameOfWords("One more set")).toBe("One more set");
    expect(nameOfWords("x".repeat(81))).toHaveLength(80);
  });
});

describe("examples to start from", () => {
  it("are a Saturday shift where the line does not work yet, and one more set of a mould", () => {
    const examples = scenarioExamples(ground);
    // the made plan works on Saturdays until noon, so the early shift is not free
    expect(examples.shift?.shift).toMatchObject({ date: "2026-12-05", start: "14:00", end: "22:00" });
    expect(examples.copy).toMatchObject({ kind: "more copies", more: 1 });
  });

  it("are none where the plant has neither lines nor moulds", () => {
    const bare = { ...ground, plant: { ...ground.plant, lines: [], moulds: [] } };
    const empty = boardPlan("P0", { ...ground.plan.document, segments: [] });
    expect(scenarioExamples({ ...bare, plan: empty })).toEqual({ shift: null, copy: null });
  });
});
