import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { boardPlan } from "../kernels/board-plan.ts";
import { rowChoices } from "../kernels/board-rows.ts";
import { everything } from "../kernels/plan-filter.ts";
import { readBoardAddress, writeBoardAddress } from "./board-address.ts";
import { emptyBoard, type BoardState } from "./board-state.ts";
import type { Intent } from "./intents.ts";
import { reduce, selectedOrderId } from "./reduce.ts";

const plan = boardPlan("p", madePlan({ lines: 3, runsPerLine: 6, seed: 8 }));
const opened = [
  { kind: "board resized", size: { widthPx: 1100, heightPx: 600 } } as const,
  { kind: "plan arrived", plan } as const,
].reduce<BoardState>((state, intent) => reduce(state, intent).state, emptyBoard);

const value = fc.option(fc.string({ minLength: 1, maxLength: 12 }));
const boards = fc
  .record({
    filter: fc.record({
      onlyLate: fc.boolean(),
      customer: value,
      productId: value,
      mouldId: value,
      sheetId: value,
      text: fc.string({ maxLength: 12 }),
    }),
    rowChoice: fc.constantFrom(...rowChoices),
    orderId: fc.option(fc.constantFrom(...plan.orders.keys())),
    factor: fc.double({ min: 0.3, max: 30, noNaN: true }),
    pan: fc.integer({ min: -500, max: 3000 }),
  })
  .map(({ filter, rowChoice, orderId, factor, pan }): BoardState => {
    const chosen = { ...opened, filter, rowChoice };
    const sought = orderId === null ? chosen : reduce(chosen, { kind: "order sought", orderId }).state;
    const zoomed = reduce(sought, { kind: "zoomed", atX: null, factor }).state;
    return reduce(zoomed, { kind: "panned", byX: pan, byY: 0 }).state;
  });

describe("the board's address", () => {
  it("brings another board to show the same", () => {
    fc.assert(
      fc.property(boards, (state) => {
        const address = writeBoardAddress(state, new URLSearchParams());
        const sent = readBoardAddress(new URLSearchParams(address.toString()));
        const shown = reduce(opened, { kind: "address opened", address: sent }).state;
        expect(shown.filter).toEqual(state.filter);
        expect(shown.rowChoice).toBe(state.rowChoice);
        expect(selectedOrderId(shown)).toBe(selectedOrderId(state));
        expect(Math.abs(shown.view.startAt - state.view.startAt)).toBeLessThanOrEqual(2);
        expect(shown.view.secondsPerPx / state.view.secondsPerPx).toBeCloseTo(1, 3);
        expect(reduce(shown, { kind: "address opened", address: sent }).state.view).toEqual(shown.view);
      }),
    );
  });

  it("shows the same stretch on a narrower screen", () => {
    const address = writeBoardAddress(opened, new URLSearchParams());
    const narrow = reduce(opened, { kind: "board resized", size: { widthPx: 700, heightPx: 600 } }).state;
    const shown = reduce(narrow, { kind: "address opened", address: readBoardAddress(address) }).state;
    const span = (state: BoardState): number => state.view.secondsPerPx * (state.size.widthPx - 122);
    expect(Math.abs(span(shown) - span(opened))).toBeLessThan(2);
  });

  it("keeps the stretch while the board settles, as when the details of the selected order open beside it", () => {
    const [orderId = ""] = plan.orders.keys();
    const sought = reduce(opened, { kind: "order sought", orderId }).state;
    const day = reduce(sought, { kind: "span chosen", spanSeconds: 86_400 }).state;
    const sent = readBoardAddress(writeBoardAddress(day, new URLSearchParams()));
    const narrow: Intent = { kind: "board resized", size: { widthPx: 640, heightPx: 600 } };
    const span = (state: BoardState): number => state.view.secondsPerPx * (state.size.widthPx - 122);

    const shown = reduce(reduce(opened, { kind: "address opened", address: sent }).state, narrow);
    expect(Math.abs(span(shown.state) - span(day))).toBeLessThan(2);
    expect(shown.effects).toMatchObject([{ kind: "keep view" }]);

    const moved = reduce(shown.state, { kind: "panned", byX: 40, byY: 0 }).state;
    const wide = reduce(moved, { kind: "board resized", size: opened.size }).state;
    expect(wide.view).toEqual(moved.view);
    const closed = reduce(shown.state, { kind: "selected", selection: null }).state;
    expect(reduce(closed, { kind: "board resized", size: opened.size }).state.view).toEqual(shown.state.view);
  });

  it("selects an order and leaves the view that a board has restored", () => {
    const [orderId = ""] = [...plan.orders.keys()].slice(-1);
    const address = {
      ...readBoardAddress(new URLSearchParams({ order: orderId })),
      time: "as shown",
    } as const;
    const shown = reduce(opened, { kind: "address opened", address }).state;
    expect(selectedOrderId(shown)).toBe(orderId);
    expect(shown.view).toEqual(opened.view);
  });

  it("leaves the parameters of others, and the time while the board has no size", () => {
    const before = new URLSearchParams("show=table&from=2026-12-01T06:00:00Z&span=86400&late=1");
    const written = writeBoardAddress({ ...opened, size: { widthPx: 0, heightPx: 0 } }, before);
    expect(written.toString()).toBe(
      new URLSearchParams("show=table&from=2026-12-01T06:00:00Z&span=86400").toString(),
    );
  });

  it("takes what it does not understand as not said", () => {
    const odd = "from=soon&span=-4&rows=walls&late=yes&customer=&order=";
    expect(readBoardAddress(new URLSearchParams(odd))).toEqual({
      filter: everything,
      rowChoice: "lines",
      orderId: null,
      time: null,
    });
  });
});
