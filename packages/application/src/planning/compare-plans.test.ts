import { describe, expect, test } from "vitest";
import { comparePlans } from "./compare-plans.ts";
import type { PlanDocument } from "./plan-document.ts";

type Lot = PlanDocument["lots"][number];
type Order = PlanDocument["orders"][number];

const lot = (orderId: string, more: Partial<Lot> = {}): Lot => ({
  orderId,
  lot: 0,
  lineId: "L1",
  setupId: "S",
  pieces: 100,
  start: "2026-11-30T06:00:00Z",
  end: "2026-11-30T08:00:00Z",
  finish: "2026-11-30T08:00:00Z",
  ...more,
});
const order = (orderId: string, state: Order["state"], finish: string | null): Order =>
  ({ orderId, state, finish }) as Order;
const plan = (lots: readonly Lot[], orders: readonly Order[] = []): PlanDocument =>
  ({ lots, orders }) as unknown as PlanDocument;

describe("two plans side by side", () => {
  test("equal plans have no difference, whatever the order of their lots", () => {
    const orders = [order("A", "on time", "2026-11-30T08:00:00Z")];
    const one = plan([lot("A"), lot("A", { lot: 1 }), lot("B")], orders);
    const other = plan([lot("B"), lot("A", { lot: 1 }), lot("A")], orders);
    expect(comparePlans(one, other)).toEqual({ movedLots: [], changedFinishes: [], changedStates: [] });
  });

  test("lots on another line, at another time, with other pieces, new and gone, by order and lot", () => {
    const gone = lot("A", { lot: 10 });
    const late = lot("A", { lot: 2, start: "2026-11-30T06:05:00Z" });
    const from = [lot("C"), lot("B"), gone, lot("A", { lot: 2 }), lot("A")];
    const to = [lot("C", { lineId: "L2" }), lot("B", { pieces: 50 }), late, lot("A"), lot("D")];
    expect(comparePlans(plan(from), plan(to)).movedLots).toEqual([
      { orderId: "A", lot: 2, from: from[3], to: late },
      { orderId: "A", lot: 10, from: gone, to: null },
      { orderId: "B", lot: 0, from: from[1], to: to[1] },
      { orderId: "C", lot: 0, from: from[0], to: to[0] },
      { orderId: "D", lot: 0, from: null, to: to[4] },
    ]);
  });

  test("orders that finish at another time, and orders that changed sides", () => {
    const [early, later] = ["2026-11-30T08:00:00Z", "2026-12-01T08:00:00Z"];
    const from = [
      order("b", "on time", early),
      order("a", "late", later),
      order("x", "late", later),
      order("k", "late", early),
    ];
    const to = [
      order("a", "on time", early),
      order("b", "unplanned", null),
      order("n", "on time", early),
      order("k", "late", early),
    ];
    const difference = comparePlans(plan([], from), plan([], to));
    expect(difference.changedFinishes).toEqual([
      { orderId: "a", from: later, to: early },
      { orderId: "b", from: early, to: null },
      { orderId: "n", from: null, to: early },
      { orderId: "x", from: later, to: null },
    ]);
    expect(difference.changedStates).toEqual([
      { orderId: "a", from: "late", to: "on time" },
      { orderId: "b", from: "on time", to: "unplanned" },
      { orderId: "n", from: null, to: "on time" },
      { orderId: "x", from: "late", to: null },
    ]);
  });

  test("the other way round, from and to change places", () => {
    const [one, other] = [plan([lot("A"), lot("B")]), plan([lot("A", { lineId: "L2" })])];
    const back = comparePlans(other, one).movedLots.map(({ from, to, ...name }) => ({
      ...name,
      from: to,
      to: from,
    }));
    expect(back).toEqual(comparePlans(one, other).movedLots);
  });
});
