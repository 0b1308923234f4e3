import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { boardPlan } from "../kernels/board-plan.ts";
import { rowChoices } from "../kernels/board-rows.ts";
import { greatestScrollPx } from "../kernels/row-layout.ts";
import { clampView, viewEndAt } from "../kernels/time-scale.ts";
import { readBoardAddress } from "./board-address.ts";
import { emptyBoard, type BoardState } from "./board-state.ts";
import type { Intent } from "./intents.ts";
import { boundsOf, layoutOf } from "./board-view.ts";
import { reduce, selectedOrderId } from "./reduce.ts";

const small = boardPlan("small", madePlan({ lines: 3, runsPerLine: 5, seed: 1 }));
const large = boardPlan("large", madePlan({ lines: 30, runsPerLine: 9, seed: 2 }));
const size = fc.record({
  widthPx: fc.integer({ min: 0, max: 3000 }),
  heightPx: fc.integer({ min: 0, max: 1500 }),
});
const number = fc.integer({ min: -4000, max: 4000 });
const hit = fc.oneof(
  fc.record({
    kind: fc.constant("segment" as const),
    index: fc.integer({ min: 0, max: 600 }),
    rowIndex: fc.integer({ min: 0, max: 40 }),
  }),
  fc.record({
    kind: fc.constant("gap" as const),
    rowIndex: fc.integer({ min: 0, max: 2 }),
    start: number,
    end: number,
  }),
  fc.record({ kind: fc.constant("row" as const), rowIndex: fc.integer({ min: 0, max: 2 }) }),
  fc.constant({ kind: "nothing" as const }),
);

const intents: fc.Arbitrary<Intent> = fc.oneof(
  fc.constantFrom(small, large, null).map((plan): Intent => ({ kind: "plan arrived", plan })),
  size.map((wished): Intent => ({ kind: "board resized", size: wished })),
  fc.record({ kind: fc.constant("panned" as const), byX: number, byY: number }),
  fc.record({
    kind: fc.constant("zoomed" as const),
    atX: fc.option(number),
    factor: fc.double({ min: -1, max: 30, noNaN: true }),
  }),
  fc
    .oneof(fc.constant("whole plan" as const), fc.integer({ min: 60, max: 9_000_000 }))
    .map((spanSeconds): Intent => ({ kind: "span chosen", spanSeconds })),
  fc.integer({ min: 0, max: 2_000_000_000 }).map((at): Intent => ({ kind: "went to instant", at })),
  hit.map((found): Intent => ({ kind: "picked", hit: found })),
  fc.option(hit).map((found): Intent => ({ kind: "pointed at", hit: found })),
  fc.constantFrom("20003", "20199", "none").map((orderId): Intent => ({ kind: "order sought", orderId })),
  fc
    .constantFrom(
      "earlier",
      "later",
      "line above",
      "line below",
      "first on line",
      "last on line",
      "next late",
      "previous late",
    )
    .map((step): Intent => ({ kind: "walked", step })),
  fc.constantFrom(...rowChoices).map((choice): Intent => ({ kind: "rows chosen", choice })),
  fc.boolean().map((onlyLate): Intent => ({ kind: "filtered", by: { onlyLate } })),
  fc.string({ maxLength: 6 }).map((text): Intent => ({ kind: "filtered", by: { text } })),
  fc.webQueryParameters().map((query): Intent => ({
    kind: "address opened",
    address: readBoardAddress(new URLSearchParams(query)),
  })),
);

const play = (state: BoardState, steps: readonly Intent[]): BoardState =>
  steps.reduce((at, intent) => reduce(at, intent).state, state);

describe("reduce", () => {
  it("answers any intents in any order, and what it shows stays within the plan", () => {
    fc.assert(
      fc.property(fc.array(intents, { maxLength: 60 }), (steps) => {
        const state = play(emptyBoard, steps);
        const layout = layoutOf(state);
        expect(state.view.scrollPx).toBeGreaterThanOrEqual(0);
        expect(state.view.secondsPerPx).toBeGreaterThan(0);
        expect(Number.isFinite(state.view.startAt)).toBe(true);
        if (state.selection?.kind === "segment")
          expect(state.plan?.segments[state.selection.index]).toBeDefined();
        if (state.plan !== null && state.size.widthPx > 0) {
          expect(state.view.scrollPx).toBeLessThanOrEqual(greatestScrollPx(layout) + 1e-9);
          expect(viewEndAt(state.view, boundsOf(state).widthPx)).toBeGreaterThan(state.plan.startAt);
          expect(clampView(state.view, boundsOf(state)).secondsPerPx).toBeCloseTo(state.view.secondsPerPx, 6);
        }
      }),
      { numRuns: 300 },
    );
  });

  const opened = play(emptyBoard, [
    { kind: "board resized", size: { widthPx: 1200, heightPx: 600 } },
    { kind: "plan arrived", plan: large },
  ]);

  it("opens with the first week, whichever of plan and size comes first", () => {
    const other = play(emptyBoard, [
      { kind: "plan arrived", plan: large },
      { kind: "board resized", size: { widthPx: 1200, heightPx: 600 } },
    ]);
    expect(other.view).toEqual(opened.view);
    const days = (viewEndAt(opened.view, boundsOf(opened).widthPx) - opened.view.startAt) / 86_400;
    expect(days).toBeGreaterThan(6.5);
    expect(days).toBeLessThan(7.6);
  });

  it("keeps view and order over a new plan of the same plant", () => {
    const looked = play(opened, [
      { kind: "zoomed", atX: 500, factor: 2 },
      { kind: "order sought", orderId: "20003" },
    ]);
    const renewed = boardPlan("renewed", madePlan({ lines: 30, runsPerLine: 9, seed: 3 }));
    const after = play(looked, [{ kind: "plan arrived", plan: renewed }]);
    expect(after.view).toEqual(looked.view);
    expect(selectedOrderId(after)).toBe("20003");
  });

  it("chooses a line by its name or by key, and keeps it over a new plan", () => {
    const [first, second] = large.lines;
    if (first === undefined || second === undefined) throw new Error("the plan has lines");
    const byName = play(opened, [{ kind: "picked", hit: { kind: "row", rowIndex: 1 } }]);
    expect(byName.selection).toEqual({ kind: "line", lineId: second.id });
    expect(play(opened, [{ kind: "line sought" }]).selection).toEqual({ kind: "line", lineId: first.id });
    const walked = play(opened, [
      { kind: "walked", step: "later" },
      { kind: "walked", step: "line below" },
      { kind: "line sought" },
    ]);
    expect(walked.selection).toEqual({ kind: "line", lineId: second.id });
    const gap = { kind: "gap", rowIndex: 1, start: 0, end: 1 } as const;
    const ofGap = play(opened, [{ kind: "selected", selection: gap }, { kind: "line sought" }]);
    expect(ofGap.selection).toEqual({ kind: "line", lineId: second.id });
    expect(play(walked, [{ kind: "plan arrived", plan: small }]).selection).toEqual(walked.selection);
    const inMoulds = play(opened, [
      { kind: "rows chosen", choice: "moulds" },
      { kind: "picked", hit: { kind: "row", rowIndex: 1 } },
    ]);
    expect(inMoulds.selection).toBeNull();
  });

  it("asks to keep a view that has moved, and only then", () => {
    expect(reduce(opened, { kind: "panned", byX: 50, byY: 0 }).effects).toHaveLength(1);
    expect(reduce(opened, { kind: "panned", byX: 0, byY: 40 }).effects).toHaveLength(0);
    expect(reduce(opened, { kind: "filtered", by: { onlyLate: true } }).effects).toHaveLength(0);
  });

  it("shows what the keyboard reaches", () => {
    let state = opened;
    for (let step = 0; step < 25; step += 1) {
      state = reduce(state, { kind: "walked", step: step % 2 === 0 ? "line below" : "later" }).state;
      const segment =
        state.selection?.kind === "segment" ? state.plan?.segments[state.selection.index] : undefined;
      expect(segment?.start).toBeGreaterThanOrEqual(state.view.startAt);
      expect(segment?.start).toBeLessThan(viewEndAt(state.view, boundsOf(state).widthPx));
    }
  });
});
