import type { RunSegment } from "@formweek/contracts";
import type { BoardPlan, BoardSegment } from "./board-plan.ts";
import { byName, type FilterChoice } from "./filter-choice.ts";

/** What the planner wants to see; null and an empty text find everything. */
export interface PlanFilter {
  readonly onlyLate: boolean;
  readonly customer: string | null;
  readonly productId: string | null;
  readonly mouldId: string | null;
  readonly sheetId: string | null;
  readonly text: string;
}

export const everything: PlanFilter = {
  onlyLate: false,
  customer: null,
  productId: null,
  mouldId: null,
  sheetId: null,
  text: "",
};

/**
 * Order numbers that a filter keeps, or null when it keeps all. An order passes every part of the filter; mould and sheet
 * are those of any of its runs. Text is looked for, without regard to case, in order number, customer, product, mould and
 * sheet of the order's runs.
 */
export function ordersKept(plan: BoardPlan, filter: PlanFilter): ReadonlySet<string> | null {
  const text = filter.text.trim().toLowerCase();
  const { onlyLate, customer, productId, mouldId, sheetId } = filter;
  const isOpen = [customer, productId, mouldId, sheetId].every((wanted) => wanted === null);
  if (text === "" && !onlyLate && isOpen) return null;
  const kept = new Set<string>();
  for (const order of plan.orders.values()) {
    if (onlyLate && order.lateSeconds <= 0) continue;
    if (customer !== null && order.customer !== customer) continue;
    if (productId !== null && order.productId !== productId) continue;
    if (!hasRun(plan, order.orderId, filter)) continue;
    if (text === "" || wordsOf(plan, order.orderId).includes(text)) kept.add(order.orderId);
  }
  return kept;
}

function hasRun(plan: BoardPlan, orderId: string, { mouldId, sheetId }: PlanFilter): boolean {
  const runs = plan.runsOfOrder.get(orderId) ?? [];
  const some = (holds: (run: RunSegment) => boolean): boolean =>
    runs.some(({ source }) => source.kind === "run" && holds(source));
  return (
    (mouldId === null || some(({ mould }) => mould?.mouldId === mouldId)) &&
    (sheetId === null || some((run) => run.sheetId === sheetId))
  );
}

/** What can be filtered by: id and name, by name. */
interface FilterChoices {
  readonly customer: readonly FilterChoice[];
  readonly productId: readonly FilterChoice[];
  readonly mouldId: readonly FilterChoice[];
  readonly sheetId: readonly FilterChoice[];
}

/** Customers, products, moulds and sheets that a plan has. */
export function filterChoices(plan: BoardPlan): FilterChoices {
  const orders = [...plan.orders.values()];
  const runs = plan.segments.map(({ source }) => source).filter((source) => source.kind === "run");
  return {
    customer: byName(orders.map(({ customer }) => [customer, customer])),
    productId: byName(orders.map(({ productId, productName }) => [productId, productName])),
    mouldId: byName(
      runs.flatMap(({ mould, mouldName }) => (mould === null ? [] : [[mould.mouldId, mouldName] as const])),
    ),
    sheetId: byName(runs.map(({ sheetId, sheetName }) => [sheetId, sheetName])),
  };
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
