import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { workingTimeOf } from "../calendar/working-time.ts";
import { roughCut } from "./rough-cut.ts";
import type { RoughCutInput, RoughDemand } from "./rough-cut.ts";

const HOUR = 3600;
const DAY = 24 * HOUR;
const WEEK = 7 * DAY;
const always = workingTimeOf([[0, 10 * WEEK]]);
const never = workingTimeOf([]);
const window = { start: 0, end: 10 * WEEK };

const option = (lineId: string, more: Partial<RoughDemand["options"][number]> = {}) => ({
  lineId,
  mouldId: "M",
  secondsPerPiece: 0.5,
  changeSeconds: HOUR,
  teamSeconds: HOUR / 2,
  ...more,
});
const demand = (more: Partial<RoughDemand> = {}): RoughDemand => ({
  orderId: "A",
  pieces: 7200,
  readyBy: 5 * WEEK,
  earliestStartAt: null,
  options: [option("one"), option("two")],
  ...more,
});
const line = (id: string, workingTime = always, planned = never) => ({ id, workingTime, planned });
const cut = (more: Partial<RoughCutInput>) =>
  roughCut({ demands: [demand()], lines: [line("one"), line("two")], teams: [], window, ...more });

describe("rough-cut load", () => {
  it("spreads an order over its lines by the hours that the plan leaves them", () => {
    // Σ quantity ÷ rate + set-up: 7,200 × 0.5 s + 1 h = 2 h; line "two" has a third of its week left.
    const taken = workingTimeOf([[4 * WEEK, 4 * WEEK + (WEEK * 2) / 3]]);
    const { placements } = cut({ lines: [line("one"), line("two", always, taken)] });
    expect(placements[0]).toMatchObject({ from: 4 * WEEK, to: 5 * WEEK });
    expect(placements[0]?.parts.map(({ share, run, change }) => [share, run, change])).toEqual([
      [0.75, 75 * HOUR, 75 * HOUR],
      [0.25, 25 * HOUR, 25 * HOUR],
    ]);
  });

  it("goes back week by week where the lines have less time than it takes", () => {
    const hourADay = workingTimeOf(Array.from({ length: 70 }, (_, day) => [day * DAY, day * DAY + HOUR]));
    const big = demand({ pieces: 7200 * 10, options: [option("one")] });
    // 10 h + 1 h of change at 7 h a week take two weeks
    expect(cut({ demands: [big], lines: [line("one", hourADay)] }).placements[0]).toMatchObject({
      from: 3 * WEEK,
      to: 5 * WEEK,
    });
    const held = { ...big, earliestStartAt: 4 * WEEK + DAY };
    expect(cut({ demands: [held], lines: [line("one", hourADay)] }).placements[0]?.from).toBe(4 * WEEK + DAY);
  });

  it("puts what is overdue in the first week, and leaves out what is due after the window", () => {
    const late = demand({ readyBy: -5 });
    expect(cut({ demands: [late] }).placements[0]).toMatchObject({ from: 0, to: WEEK });
    const far = demand({ readyBy: 11 * WEEK });
    expect(cut({ demands: [far, demand({ pieces: 0 })] })).toEqual({ placements: [], unplaced: [] });
  });

  it("says which orders load nothing, and why", () => {
    const nowhere = demand({ orderId: "B", options: [option("gone")] });
    const shut = demand({ orderId: "C", options: [option("shut")] });
    expect(cut({ demands: [nowhere, shut], lines: [line("shut", never)] }).unplaced).toEqual([
      { orderId: "B", reason: "no line" },
      { orderId: "C", reason: "no hours" },
    ]);
  });

  it("gives setters' work to the teams by their hours", () => {
    const halfWeek = workingTimeOf([[4 * WEEK, 4.5 * WEEK]]);
    const { placements } = cut({ teams: [line("T1"), line("T2", halfWeek), line("T3", never)] });
    expect(placements[0]?.teams.map(({ teamId, change }) => [teamId, change])).toEqual([
      ["T1", Math.round((50 * HOUR * 2) / 3)],
      ["T2", Math.round((50 * HOUR) / 3)],
    ]);
  });

  it("adds up to the order's work and stays between earliest start and due", () => {
    const spells = fc
      .array(fc.tuple(fc.nat(70), fc.nat(70)), { maxLength: 8 })
      .map((days) => workingTimeOf(days.map(([from, to]) => [from * DAY, to * DAY])));
    const demands = fc.record({
      pieces: fc.integer({ min: 1, max: 1_000_000 }),
      readyBy: fc.integer({ min: -WEEK, max: 10 * WEEK }),
      earliestStartAt: fc.option(fc.nat(10 * WEEK - 1)),
    });
    fc.assert(
      fc.property(demands, spells, spells, spells, (given, one, two, planned) => {
        const { placements, unplaced } = cut({
          demands: [demand(given)],
          lines: [line("one", one, planned), line("two", two)],
        });
        expect(placements.length + unplaced.length).toBe(1);
        for (const { from, to, parts } of placements) {
          expect(from).toBeGreaterThanOrEqual(given.earliestStartAt ?? 0);
          expect(to).toBeLessThanOrEqual(window.end);
          if (given.readyBy > (given.earliestStartAt ?? 0)) expect(to).toBe(given.readyBy);
          expect(parts.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
          const seconds = parts.reduce((sum, { run, change }) => sum + run + change, 0) / 100;
          expect(Math.abs(seconds - given.pieces * 0.5 - HOUR)).toBeLessThan(0.05);
        }
      }),
    );
  });
});
