import type { Order } from "@formweek/capacity-model";
import type { Plan } from "@formweek/scheduler";
import { assembleOrders } from "../planning/assemble-problem.ts";
import type { PlanDocument } from "../planning/plan-document.ts";
import { type PlannedRecords, heldByNumber, sharesByOrder } from "../planning/planning-snapshot.ts";
import { auditedDocument } from "../planning/retime-document.ts";
import { type Result } from "../result.ts";
import { type StandingDesk, openDesk } from "./standing-desk.ts";

/** Records with one more order that is held, and the stock that is kept for it. */
export function withHeld(records: PlannedRecords, order: Order, stockPieces: number): PlannedRecords {
  const held = records.orders.filter(({ id }) => records.heldOrderIds.has(id));
  const booked = records.orders.filter(({ id }) => !records.heldOrderIds.has(id));
  return {
    ...records,
    orders: [...booked, ...heldByNumber([...held, order])],
    heldOrderIds: new Set([...records.heldOrderIds, order.id]),
    stockShares: sharesByOrder([...records.stockShares, { orderId: order.id, pieces: stockPieces }]),
  };
}

/** Records without some of the orders that are held. */
export function withoutHeld(records: PlannedRecords, orderIds: ReadonlySet<string>): PlannedRecords {
  return {
    ...records,
    orders: records.orders.filter(({ id }) => !orderIds.has(id)),
    heldOrderIds: new Set([...records.heldOrderIds].filter((id) => !orderIds.has(id))),
    stockShares: records.stockShares.filter(({ orderId }) => !orderIds.has(orderId)),
  };
}

/** Records in which an order that is held has become one of the book, with its stock. */
export function withOrdered(records: PlannedRecords, heldId: string, order: Order): PlannedRecords {
  const share = records.stockShares.find(({ orderId }) => orderId === heldId)?.pieces ?? 0;
  const rest = withoutHeld(records, new Set([heldId]));
  const held = rest.orders.filter(({ id }) => rest.heldOrderIds.has(id));
  const booked = rest.orders.filter(({ id }) => !rest.heldOrderIds.has(id));
  return {
    ...rest,
    orders: [...[...booked, order].sort(byDue), ...held],
    stockShares: sharesByOrder([...rest.stockShares, { orderId: order.id, pieces: share }]),
  };
}

/** As the book lists them. */
const byDue = (a: Order, b: Order): number => a.dueAt - b.dueAt || (a.id < b.id ? -1 : 1);

/** A plan of the desk with one more order, as a document under records that hold that order. Audited. */
export function documentWith(
  standing: StandingDesk,
  records: PlannedRecords,
  plan: Plan,
): Result<PlanDocument> {
  const { frame, assembled, document } = standing;
  const made = assembleOrders(frame, records);
  const problem = { ...made.problem, pins: assembled.problem.pins };
  return auditedDocument({ ...made, problem }, plan, document);
}

/** The desk's plan timed again under other records, as a document. Audited. */
export function documentUnder(
  standing: StandingDesk,
  changed: { readonly records: PlannedRecords; readonly document?: PlanDocument },
  now: number,
): Result<PlanDocument> {
  const reopened = openDesk({ ...standing, ...changed }, now);
  if (!reopened.ok) return reopened;
  return auditedDocument(reopened.value.assembled, reopened.value.desk.plan(), standing.document);
}

/** The same plan in which an order goes by another number. */
export function renamed(document: PlanDocument, from: string, to: string): PlanDocument {
  const named = <T extends { readonly orderId: string }>(each: T): T =>
    each.orderId === from ? { ...each, orderId: to } : each;
  return {
    ...document,
    segments: document.segments.map((segment) => (segment.kind === "change" ? segment : named(segment))),
    lots: document.lots.map(named),
    orders: document.orders.map(named),
    unplanned: document.unplanned.map(named),
  };
}
