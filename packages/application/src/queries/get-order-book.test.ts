import { Order } from "@formweek/capacity-model";
import { describe, expect, test } from "vitest";
import type { DocumentOrder } from "../planning/plan-document.ts";
import { withStates } from "./get-order-book.ts";

const order = Order.parse({
  id: "O-1",
  customer: "A customer",
  productId: "P-1",
  pieces: 1000,
  // 2026-11-30T05:00:00Z, by `date -u -d @1796014800`
  dueAt: 1_796_014_800,
  earliestStartAt: null,
  weight: 1,
  kind: "firm",
  underTolerance: 0,
  overTolerance: 0,
  partsAllowed: false,
});

const planned: DocumentOrder = {
  orderId: "O-1",
  customer: "A customer",
  productId: "P-1",
  productName: "A product",
  pieces: 1000,
  due: "2026-11-30T05:00:00Z",
  state: "late",
  finish: "2026-11-30T06:00:00Z",
  lateSeconds: 3600,
  slackSeconds: -3600,
  fromStockPieces: 100,
  toMakePieces: 900,
  grossPieces: 918,
};

const stateOf = (entry: Order, ...entries: readonly DocumentOrder[]) =>
  withStates([entry], { orders: entries, unplanned: [] })[0];

describe("an order with its state", () => {
  test("takes state, finish and stock from the plan", () => {
    expect(stateOf(order, planned)).toEqual({
      ...order,
      state: "late",
      finish: "2026-11-30T06:00:00Z",
      slackSeconds: -3600,
      fromStockPieces: 100,
      toMakePieces: 900,
      reasons: [],
    });
  });

  test("is not planned yet without a plan, and where the plan does not know it", () => {
    const open = { state: "not planned yet", finish: null, slackSeconds: null, reasons: [] };
    expect(withStates([order], null)[0]).toMatchObject(open);
    expect(stateOf(order)).toMatchObject(open);
  });

  test.each([
    ["pieces", { ...order, pieces: 1001 }],
    ["due", { ...order, dueAt: order.dueAt + 1 }],
    ["product", Order.parse({ ...order, productId: "P-2" })],
  ])("is not planned yet when its %s changed since the plan", (_, changed) => {
    expect(stateOf(changed, planned)).toMatchObject({ state: "not planned yet", finish: null });
  });

  test("says every reason why it is unplanned", () => {
    const unplanned = { ...planned, state: "unplanned" as const, finish: null };
    const reasons = [
      { code: "no-line-fits", lineId: null, text: "No line takes it." },
      { code: "no-operators", lineId: "L1", text: "Nobody is there." },
    ];
    const [shown] = withStates([order], { orders: [unplanned], unplanned: [{ orderId: "O-1", reasons }] });
    expect(shown?.reasons).toEqual(reasons);
  });
});
