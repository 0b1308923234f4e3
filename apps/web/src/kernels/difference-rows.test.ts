import type { PlanComparison, PlanDocument } from "@formweek/contracts";
import { describe, expect, test } from "vitest";
import { differencePicture } from "./difference-picture.ts";
import { changedOrderRows, movedRows, termRows } from "./difference-rows.ts";

type Lot = PlanDocument["lots"][number];
type Order = PlanDocument["orders"][number];

const HOUR = 3600;
const start = Date.parse("2026-11-30T05:00:00Z") / 1000;
const at = (hour: number): string =>
  new Date((start + hour * HOUR) * 1000).toISOString().replace(".000Z", "Z");

const lot = (
  orderId: string,
  lineId: string,
  hours: readonly [number, number],
  more: Partial<Lot> = {},
): Lot => ({
  orderId,
  lot: 0,
  lineId,
  setupId: "S",
  pieces: 100,
  start: at(hours[0]),
  end: at(hours[1]),
  finish: at(hours[1]),
  ...more,
});
const order = (orderId: string, finish: number | null, due: number): Order => {
  const lateSeconds = finish === null ? 0 : Math.max(0, finish - due) * HOUR;
  return {
    orderId,
    customer: `customer of ${orderId}`,
    productId: "cup",
    productName: "Cup",
    pieces: 100,
    due: at(due),
    state: finish === null ? "unplanned" : lateSeconds > 0 ? "late" : "on time",
    finish: finish === null ? null : at(finish),
    lateSeconds,
    slackSeconds: null,
    fromStockPieces: 0,
    toMakePieces: 100,
    grossPieces: 100,
  };
};
const lines = ["L1", "L2", "L3"].map((id) => ({ id, name: `Line ${id}` }));
const plan = (lots: readonly Lot[], orders: readonly Order[] = []): PlanDocument =>
  ({ lots, orders, lines }) as unknown as PlanDocument;

const comparison = (more: Partial<PlanComparison>): PlanComparison =>
  ({ movedLots: [], changedFinishes: [], changedStates: [], sameInputs: true, ...more }) as PlanComparison;

describe("runs that moved", () => {
  const was = lot("a", "L1", [0, 2]);
  const is = lot("a", "L2", [3, 5]);
  const other = lot("b", "L1", [6, 8]);
  const grown = { ...other, pieces: 120, end: at(9) };
  const from = plan([was, other, lot("gone", "L3", [1, 2])], [order("a", 2, 9), order("b", 8, 9)]);
  const to = plan([is, grown, lot("new", "L1", [0, 1])], [order("a", 5, 9), order("b", 9, 9)]);
  const movedLots = [
    { orderId: "a", lot: 0, from: was, to: is },
    { orderId: "b", lot: 0, from: other, to: grown },
    { orderId: "gone", lot: 0, from: from.lots[2] ?? null, to: null },
    { orderId: "new", lot: 0, from: null, to: to.lots[2] ?? null },
  ];
  const rows = movedRows({ comparison: comparison({ movedLots }), from, to });

  test("come by the time of the second plan, with line, shift and customer", () => {
    expect(rows.map(({ orderId }) => orderId)).toEqual(["new", "gone", "a", "b"]);
    expect(rows[2]).toEqual({
      orderId: "a",
      lot: 0,
      customer: "customer of a",
      productName: "Cup",
      from: { lineId: "L1", start, end: start + 2 * HOUR, pieces: 100 },
      to: { lineId: "L2", start: start + 3 * HOUR, end: start + 5 * HOUR, pieces: 100 },
      changesLine: true,
      laterBy: 3 * HOUR,
    });
    expect(rows.map(({ laterBy }) => laterBy)).toEqual([null, null, 3 * HOUR, 0]);
    expect(rows.filter(({ changesLine }) => changesLine)).toHaveLength(1);
  });

  test("are drawn with their neighbours on the lines that they left and came to, and nowhere else", () => {
    const some = rows.filter(({ orderId }) => orderId === "a");
    const picture = differencePicture(from, to, some);
    expect(picture?.lines.map(({ name }) => name)).toEqual(["Line L1", "Line L2"]);
    expect(picture?.lines[0]?.from.map(({ orderId, hasMoved }) => [orderId, hasMoved])).toEqual([
      ["a", true],
      ["b", false],
    ]);
    expect(picture?.lines[0]?.to.map(({ orderId }) => orderId)).toEqual(["new", "b"]);
    expect(picture?.lines[1]?.to.map(({ orderId, hasMoved }) => [orderId, hasMoved])).toEqual([["a", true]]);
    expect(picture).toMatchObject({ start: start - 6 * HOUR, end: start + 11 * HOUR });
    expect(differencePicture(from, to, [])).toBeNull();
  });
});

describe("orders that finish otherwise", () => {
  test("come with what got worse first, then what got better, then the largest shift", () => {
    const from = plan(
      [],
      [
        order("late", 2, 4),
        order("better", 9, 4),
        order("out", 3, 4),
        order("in", null, 4),
        order("far", 1, 9),
        order("near", 1, 9),
        order("still", 6, 4),
      ],
    );
    const to = plan(
      [],
      [
        order("late", 7, 4),
        order("better", 4, 4),
        order("out", null, 4),
        order("in", 3, 4),
        order("far", 8, 9),
        order("near", 2, 9),
        order("still", 9, 4),
      ],
    );
    const changedFinishes = from.orders.map(({ orderId, finish }) => ({
      orderId,
      from: finish,
      to: to.orders.find((each) => each.orderId === orderId)?.finish ?? null,
    }));
    const rows = changedOrderRows({ comparison: comparison({ changedFinishes }), from, to });
    expect(rows.map(({ orderId, side }) => [orderId, side])).toEqual([
      ["out", "left out"],
      ["late", "newly late"],
      ["better", "on time again"],
      ["in", "newly planned"],
      ["far", "none"],
      ["still", "none"],
      ["near", "none"],
    ]);
    expect(rows[1]).toMatchObject({
      due: start + 4 * HOUR,
      from: start + 2 * HOUR,
      to: start + 7 * HOUR,
      laterBy: 5 * HOUR,
      lateSeconds: 3 * HOUR,
    });
    expect(rows[0]).toMatchObject({ to: null, laterBy: null });
  });
});

test("cost terms of either plan come side by side; those that neither has are left out", () => {
  const side = (costs: Readonly<Record<string, number>>) =>
    ({
      objective: { terms: Object.entries(costs).map(([name, cost]) => ({ name, cost })) },
    }) as PlanComparison["from"];
  const rows = termRows(
    comparison({
      from: side({ late: 10, scrap: 0, changes: 5 }),
      to: side({ late: 0, scrap: 0, labour: 7 }),
    }),
  );
  expect(rows).toEqual([
    { name: "late", from: 10, to: 0 },
    { name: "changes", from: 5, to: 0 },
    { name: "labour", from: 0, to: 7 },
  ]);
});
