import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { boardPlan } from "./board-plan.ts";
import { dropPlaceAt, homePlace, isSamePlace, stepPlace } from "./drop-place.ts";
import { isSameLot, lotsOfLine } from "./line-lots.ts";

const plan = boardPlan("p", madePlan({ lines: 4, runsPerLine: 6, seed: 5 }));
const lots = plan.lines.flatMap((line) => lotsOfLine(line).map((lot) => ({ ...lot, lineIndex: line.index })));
const anyLot = fc.constantFrom(...lots);

describe("lotsOfLine", () => {
  it("joins the stretches of a lot that pauses", () => {
    const document = madePlan({ lines: 1, runsPerLine: 2, seed: 1 });
    const [first, ...rest] = document.segments;
    if (first?.kind !== "run") throw new Error("a line begins with a run");
    const middle = Date.parse(first.start) + 3_600_000;
    const at = (ms: number): string => new Date(ms).toISOString().replace(".000Z", "Z");
    const { lineId, orderId, lot } = first;
    const paused = boardPlan("paused", {
      ...document,
      segments: [
        { ...first, end: at(middle) },
        { kind: "stop", reason: "closed", lineId, orderId, lot, start: at(middle), end: at(middle + 60_000) },
        { ...first, start: at(middle + 60_000) },
        ...rest,
      ],
    });
    const found = paused.lines.flatMap((line) => lotsOfLine(line));
    expect(found).toHaveLength(2);
    expect(found[0]).toMatchObject({ orderId, lot, start: Date.parse(first.start) / 1000 });
    expect(found[0]?.end).toBe(Date.parse(first.end) / 1000);
  });
});

describe("dropPlaceAt", () => {
  it("puts a lot after every other lot whose middle has been passed, and before all the rest", () => {
    fc.assert(
      fc.property(anyLot, fc.nat(3), fc.integer({ min: -10, max: 400 }), (carried, lineIndex, hours) => {
        const instant = plan.startAt + hours * 3600;
        const place = dropPlaceAt(plan, carried, { lineIndex, instant });
        const line = plan.lines[lineIndex];
        if (place === null || line === undefined) throw new Error("every line has a place");
        const others = lotsOfLine(line).filter((lot) => !isSameLot(lot, carried));
        const { before } = place;
        const index = before === null ? others.length : others.findIndex((lot) => isSameLot(lot, before));
        others.forEach((lot, at) => expect((lot.start + lot.end) / 2 < instant).toBe(at < index));
      }),
    );
  });

  it("knows the place where the lot lies already, from any instant of its own run", () => {
    fc.assert(
      fc.property(anyLot, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (lot, share) => {
        const instant = lot.start + share * (lot.end - lot.start);
        expect(dropPlaceAt(plan, lot, { lineIndex: lot.lineIndex, instant })?.isHome).toBe(true);
        expect(homePlace(plan, lot)?.lineIndex).toBe(lot.lineIndex);
      }),
    );
  });

  it("has no place on a line that is not there, and no home for a lot that is not planned", () => {
    const [lot] = lots;
    if (lot === undefined) throw new Error("there are lots");
    expect(dropPlaceAt(plan, lot, { lineIndex: 9, instant: plan.startAt })).toBeNull();
    expect(homePlace(plan, { orderId: "none", lot: 0 })).toBeNull();
  });
});

describe("stepPlace", () => {
  it("walks every place of a line once, first to last, and stays at the ends", () => {
    const [carried] = lots;
    const home = carried === undefined ? null : homePlace(plan, carried);
    if (carried === undefined || home === null) throw new Error("the first lot has a home");
    let place = stepPlace(plan, carried, home, "first on line");
    const visited = [place];
    for (;;) {
      const next = stepPlace(plan, carried, place, "later");
      if (isSamePlace(next, place)) break;
      visited.push(next);
      place = next;
    }
    expect(visited).toHaveLength(6);
    expect(visited.filter(({ isHome }) => isHome)).toHaveLength(1);
    expect(visited.at(-1)?.before).toBeNull();
    expect(stepPlace(plan, carried, home, "last on line")).toEqual(visited.at(-1));
    expect(stepPlace(plan, carried, home, "line above")).toBe(home);
  });

  it("goes to the line below at about the same time, and comes back to that line", () => {
    const carried = lots[3];
    const home = carried === undefined ? null : homePlace(plan, carried);
    if (carried === undefined || home === null) throw new Error("the lot has a home");
    const below = stepPlace(plan, carried, home, "line below");
    expect(below.lineIndex).toBe(1);
    expect(below.isHome).toBe(false);
    expect(stepPlace(plan, carried, below, "line above").lineIndex).toBe(0);
  });
});
