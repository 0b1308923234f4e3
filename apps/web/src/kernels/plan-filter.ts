import type { BoardPlan, BoardSegment } from "./board-plan.ts";

/** What the planner wants to see; an empty text finds everything. */
export interface PlanFilter {
  readonly onlyLate: boolean;
  readonly text: string;
}

export const everything: PlanFilter = { onlyLate: false, text: "" };

/**
 * Order numbers that a filter keeps, or null when it keeps all. Text is looked for, without regard to case, in order
 * number, customer, product, mould and sheet of the order's runs.
 */
export function ordersKept(plan: BoardPlan, filter: PlanFilter): ReadonlySet<string> | null {
  const text = filter.text.trim().toLowerCase();
  if (text === "" && !filter.onlyLate) return null;
  const kept = new Set<string>();
  for (const order of plan.orders.values()) {
    if (filter.onlyLate && order.lateSeconds <= 0) continue;
    if (text === "" || wordsOf(plan, order.orderId).includes(text)) kept.add(order.orderId);
  }
  return kept;
}

/** A change belongs to the run after it: it is kept when that run's order is. */
export function isSegmentKept(
  plan: BoardPlan,
  segment: BoardSegment,
  kept: ReadonlySet<string> | null,
): boolean {
  if (kept === null) return true;
  const orderId = orderServed(plan, segment);
  return orderId !== null && kept.has(orderId);
}

/** The order that a segment is for; a change is for the order right after it, null where another change follows. */
export function orderServed(plan: BoardPlan, { source, lineIndex, place }: BoardSegment): string | null {
  if (source.kind !== "change") return source.orderId;
  const next = plan.lines[lineIndex]?.segments[place + 1]?.source;
  return next === undefined || next.kind === "change" ? null : next.orderId;
}

function wordsOf(plan: BoardPlan, orderId: string): string {
  const order = plan.orders.get(orderId);
  const words = [orderId, order?.customer ?? "", order?.productId ?? "", order?.productName ?? ""];
  for (const run of plan.runsOfOrder.get(orderId) ?? []) {
    if (run.source.kind === "run")
      words.push(run.source.mouldName, run.source.sheetName, run.source.colour.name);
  }
  return words.join("\n").toLowerCase();
}
