import { applyHours, hoursFaults, inverseHours } from "@formweek/application";
import type { HoursEdit, LineClosing, ShiftAdded } from "@formweek/application";
import { Plant } from "@formweek/capacity-model";
import { demoPlant } from "@formweek/demo-plant";
import { describe, expect, it } from "vitest";

const breakdown = { lineId: "L4", from: "2026-12-01T06:00", to: "2026-12-03T06:00", reason: "Breakdown" };
const plant = Plant.parse({ ...demoPlant("calm"), lineClosures: [breakdown] });
/** Over both changes of the clocks. */
const horizon = { start: Date.UTC(2026, 9, 1, 4) / 1000, end: Date.UTC(2027, 3, 30) / 1000 };

const closing = (part: Partial<LineClosing> = {}): LineClosing => ({
  lineId: "L1",
  from: "2026-12-02T22:00",
  to: "2026-12-03T06:00",
  reason: "Oven repair",
  ...part,
});
const saturday = (part: Partial<ShiftAdded> = {}): ShiftAdded => ({
  date: "2026-12-05",
  name: "early",
  start: "06:00",
  end: "14:00",
  breaks: [],
  lineIds: ["L1"],
  teamIds: [],
  operators: [],
  ...part,
});
const faultsOf = (edit: HoursEdit, of = plant) => hoursFaults(edit, { plant: of, horizon });
const close = (part: Partial<LineClosing> = {}): HoursEdit => ({
  kind: "close line",
  closure: closing(part),
});
const add = (part: Partial<ShiftAdded> = {}): HoursEdit => ({ kind: "add shift", shift: saturday(part) });

describe("a change of hours", () => {
  it.each<readonly [string, HoursEdit]>([
    ["a closure", close()],
    [
      "one that ends where another begins",
      close({ lineId: "L4", from: "2026-11-30T06:00", to: breakdown.from }),
    ],
    ["one over the skipped hour", close({ from: "2027-03-28T01:00", to: "2027-03-28T05:00" })],
    ["one that begins before the plan", close({ from: "2026-09-30T06:00", to: "2026-10-02T06:00" })],
    ["opening again", { kind: "open line", closure: breakdown }],
    ["a shift", add()],
    ["a shift that lengthens another", add({ date: "2026-12-04", start: "20:00", end: "23:30" })],
    ["a night over the skipped hour", add({ date: "2027-03-27", start: "22:00", end: "06:00" })],
    [
      "people alone",
      add({ lineIds: [], teamIds: ["setters-A"], operators: [{ poolId: "operators", heads: 2 }] }),
    ],
  ])("may be %s, and its inverse leaves the plant as it was", (_, edit) => {
    expect(faultsOf(edit)).toEqual([]);
    const changed = applyHours(plant, edit);
    expect(changed).not.toEqual(plant);
    expect(applyHours(changed, edit)).toBe(changed);
    expect(JSON.stringify(applyHours(changed, inverseHours(edit)))).toBe(JSON.stringify(plant));
    expect(faultsOf(inverseHours(edit), changed)).toEqual([]);
  });

  it.each<readonly [string, HoursEdit, string, string]>([
    ["an unknown line", close({ lineId: "L99" }), "closure.lineId", "L99"],
    ["a day that is none", close({ from: "2026-02-30T06:00" }), "closure.from", "2026-02-30"],
    ["an end before the start", close({ to: "2026-12-02T21:00" }), "closure.to", "2026-12-02 21:00"],
    ["no length", close({ to: "2026-12-02T22:00" }), "closure.to", "2026-12-02 22:00"],
    ["an hour that the clocks skip", close({ to: "2027-03-28T02:30" }), "closure.to", "skipped"],
    [
      "a spell that is over",
      close({ from: "2026-09-01T06:00", to: "2026-10-01T06:00" }),
      "closure.to",
      "over",
    ],
    [
      "a spell after the plan",
      close({ from: "2027-05-01T06:00", to: "2027-05-02T06:00" }),
      "closure.from",
      "after",
    ],
    [
      "a spell over another",
      close({ lineId: "L4", from: "2026-12-03T05:59", to: "2026-12-03T14:00" }),
      "closure.from",
      "Breakdown",
    ],
    [
      "a closure that is not there",
      { kind: "open line", closure: closing() },
      "closure.from",
      "no such closure",
    ],
    [
      "a closure with another end",
      { kind: "open line", closure: { ...breakdown, to: "2026-12-03T05:00" } },
      "closure.from",
      "2026-12-01 06:00 to 2026-12-03 06:00 (Breakdown)",
    ],
    ["a shift of an unknown line", add({ lineIds: ["L1", "L99"] }), "shift.lineIds.1", "L99"],
    ["a shift with an unknown team", add({ teamIds: ["nobody"] }), "shift.teamIds.0", "nobody"],
    ["unknown operators", add({ operators: [{ poolId: "x", heads: 1 }] }), "shift.operators.0", "x"],
    ["a line twice", add({ lineIds: ["L1", "L1"] }), "shift.lineIds.1", "twice"],
    ["a shift of nobody", add({ lineIds: [] }), "shift.lineIds", "nobody"],
    ["a shift on a day that is none", add({ date: "2026-11-31" }), "shift.date", "2026-11-31"],
    ["a shift without length", add({ end: "06:00" }), "shift.end", "06:00"],
    ["a start that the clocks skip", add({ date: "2027-03-28", start: "02:15" }), "shift.start", "03:15"],
    ["a shift that is over", add({ date: "2026-09-27" }), "shift.date", "over"],
    ["a shift after the plan", add({ date: "2027-05-01" }), "shift.date", "after"],
    ["a shift worked already", add({ date: "2026-12-04" }), "shift.lineIds.0", "already"],
    [
      "a shift of a closed line",
      add({ date: "2026-12-02", lineIds: ["L4"] }),
      "shift.lineIds.0",
      "closed from 2026-12-01 06:00",
    ],
    ["a shift that is not there", { kind: "take shift back", shift: saturday() }, "shift", "early"],
    [
      "one taken back on a day that is none",
      { kind: "take shift back", shift: saturday({ date: "2026-02-30" }) },
      "shift.date",
      "2026-02-30",
    ],
  ])("may not be %s", (_, edit, path, named) => {
    const [first, ...others] = faultsOf(edit);
    expect(others).toEqual([]);
    expect(first?.path).toBe(`edit.${path}`);
    expect(first?.problem + (first?.remedy ?? "")).toContain(named);
  });

  it("may not add the same shift a second time", () => {
    expect(faultsOf(add(), applyHours(plant, add()))).toMatchObject([{ path: "edit.shift.lineIds.0" }]);
  });

  it("keeps closures and shifts in the order of time", () => {
    const edits = [
      close({ from: "2026-11-30T06:00", to: "2026-11-30T08:00" }),
      close(),
      add(),
      add({ date: "2026-12-06" }),
    ];
    const changed = edits.toReversed().reduce(applyHours, plant);
    expect(changed.lineClosures.map(({ from }) => from)).toEqual([
      "2026-11-30T06:00",
      "2026-12-01T06:00",
      "2026-12-02T22:00",
    ]);
    expect(changed.addedShifts.map(({ date }) => date)).toEqual(["2026-12-05", "2026-12-06"]);
  });
});
