import type { PlanComparison, PlanDocument } from "@formweek/contracts";
import { secondsOf } from "./board-plan.ts";

type PlanOrder = PlanDocument["orders"][number];
type MovedLot = PlanComparison["movedLots"][number];

/** Where a lot runs; seconds since the epoch. */
export interface LotPlace {
  readonly lineId: string;
  readonly start: number;
  readonly end: number;
  readonly pieces: number;
}

/** A lot that two plans run differently. */
export interface MovedRow {
  readonly orderId: string;
  /** 0-based. */
  readonly lot: number;
  readonly customer: string;
  readonly productName: string;
  /** Null: the plan does not have it. */
  readonly from: LotPlace | null;
  readonly to: LotPlace | null;
  readonly changesLine: boolean;
  /** By how much it starts later, seconds; negative: earlier; null where one plan does not have it. */
  readonly laterBy: number | null;
}

/** How an order changes sides between two plans. */
export type SideChange = "newly late" | "on time again" | "newly planned" | "left out" | "none";

/** An order that two plans finish at different times or leave in different states. */
export interface ChangedOrderRow {
  readonly orderId: string;
  readonly customer: string;
  readonly productName: string;
  readonly due: number | null;
  readonly from: number | null;
  readonly to: number | null;
  readonly laterBy: number | null;
  /** How late it is then, seconds. */
  readonly lateSeconds: number;
  readonly side: SideChange;
}

/** A cost term of two plans, in the plant's currency. */
export interface TermRow {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

export interface ComparedDocuments {
  readonly comparison: PlanComparison;
  readonly from: PlanDocument;
  readonly to: PlanDocument;
}

const ordersOf = ({ from, to }: ComparedDocuments): ReadonlyMap<string, PlanOrder> =>
  new Map([...from.orders, ...to.orders].map((order) => [order.orderId, order]));

/** Lots that moved, by the time at which the second plan has them, else the first. */
export function movedRows(compared: ComparedDocuments): readonly MovedRow[] {
  const orders = ordersOf(compared);
  const rows = compared.comparison.movedLots.map(({ orderId, lot, from, to }): MovedRow => {
    const order = orders.get(orderId);
    const [was, is] = [placeOf(from), placeOf(to)];
    return {
      orderId,
      lot,
      customer: order?.customer ?? "",
      productName: order?.productName ?? "",
      from: was,
      to: is,
      changesLine: was !== null && is !== null && was.lineId !== is.lineId,
      laterBy: was === null || is === null ? null : is.start - was.start,
    };
  });
  const startOf = (row: MovedRow): number => row.to?.start ?? row.from?.start ?? 0;
  return rows.sort((a, b) => startOf(a) - startOf(b) || (a.orderId < b.orderId ? -1 : 1) || a.lot - b.lot);
}

function placeOf(lot: MovedLot["from"]): LotPlace | null {
  if (lot === null) return null;
  return { lineId: lot.lineId, start: secondsOf(lot.start), end: secondsOf(lot.end), pieces: lot.pieces };
}

const sideRank: Readonly<Record<SideChange, number>> = {
  "left out": 0,
  "newly late": 1,
  "on time again": 2,
  "newly planned": 3,
  none: 4,
};

/** Orders with another finish or state: what got worse first, then what got better, then the largest shifts. */
export function changedOrderRows(compared: ComparedDocuments): readonly ChangedOrderRow[] {
  const { comparison, from, to } = compared;
  const before = new Map(from.orders.map((order) => [order.orderId, order]));
  const after = new Map(to.orders.map((order) => [order.orderId, order]));
  const ids = new Set(
    [...comparison.changedFinishes, ...comparison.changedStates].map(({ orderId }) => orderId),
  );
  const rows = Array.from(ids, (orderId): ChangedOrderRow => {
    const [was, is] = [before.get(orderId), after.get(orderId)];
    const [start, end] = [finishOf(was), finishOf(is)];
    const known = is ?? was;
    return {
      orderId,
      customer: known?.customer ?? "",
      productName: known?.productName ?? "",
      due: known === undefined ? null : secondsOf(known.due),
      from: start,
      to: end,
      laterBy: start === null || end === null ? null : end - start,
      lateSeconds: is?.lateSeconds ?? 0,
      side: sideOf(was, is),
    };
  });
  return rows.sort(
    (a, b) =>
      sideRank[a.side] - sideRank[b.side] ||
      Math.abs(b.laterBy ?? 0) - Math.abs(a.laterBy ?? 0) ||
      (a.orderId < b.orderId ? -1 : 1),
  );
}

function finishOf(order: PlanOrder | undefined): number | null {
  return order === undefined || order.finish === null ? null : secondsOf(order.finish);
}

function sideOf(was: PlanOrder | undefined, is: PlanOrder | undefined): SideChange {
  const [hadPlace, hasPlace] = [finishOf(was) !== null, finishOf(is) !== null];
  if (hadPlace && !hasPlace) return is?.state === "covered by stock" ? "none" : "left out";
  if (!hadPlace && hasPlace) return "newly planned";
  const [wasLate, isLate] = [(was?.lateSeconds ?? 0) > 0, (is?.lateSeconds ?? 0) > 0];
  return wasLate === isLate ? "none" : isLate ? "newly late" : "on time again";
}

/** Cost terms of which at least one plan has any, in the order of the plans. */
export function termRows({ from, to }: PlanComparison): readonly TermRow[] {
  const costs = (side: PlanComparison["from"]): ReadonlyMap<string, number> =>
    new Map(side.objective.terms.map(({ name, cost }) => [name, cost]));
  const [before, after] = [costs(from), costs(to)];
  return [...new Set([...before.keys(), ...after.keys()])]
    .map((name) => ({ name, from: before.get(name) ?? 0, to: after.get(name) ?? 0 }))
    .filter((row) => row.from !== 0 || row.to !== 0);
}
