import { type Order, localTextAt } from "@formweek/capacity-model";
import { type AppError, type FieldFault, appError } from "../errors.ts";
import { sameRecord } from "../import/same-record.ts";
import type { OrderChange, OrderTerms } from "./order-changes.ts";

const mostFaults = 50;

/**
 * The refusal of changes whose orders are others by now than the planner saw, field by field with both versions; null when
 * the book is as it was seen. Instants are written in the plant's zone.
 */
export function conflictsWith(
  book: ReadonlyMap<string, Order>,
  changes: readonly OrderChange[],
  timeZone: string,
): AppError | null {
  const faults: FieldFault[] = [];
  for (const { before, after } of changes) {
    const id = before?.id ?? after?.id ?? "";
    const stored = book.get(id) ?? null;
    if (!sameRecord(stored, before)) faults.push(...faultsBetween(id, { stored, seen: before }, timeZone));
  }
  if (faults.length === 0) return null;
  const orders = new Set(faults.map(({ path }) => path.split(",")[0]));
  return appError(
    "order-book-changed",
    {
      title: "The order book changed in the meantime.",
      cause: `Someone else changed ${orders.size === 1 ? [...orders].join("") : `${orders.size} of these orders`} after you looked.`,
      remedy: "Look at both versions and decide which is to stand. Nothing has been changed.",
    },
    faults.slice(0, mostFaults),
  );
}

interface Versions {
  readonly stored: Order | null;
  /** What the planner saw. */
  readonly seen: OrderTerms | null;
}

function faultsBetween(id: string, { stored, seen }: Versions, timeZone: string): readonly FieldFault[] {
  const remedy = "Decide which version is to stand.";
  const record = { kind: "order", name: id } as const;
  const whole = { path: `order ${id}`, record, remedy };
  if (stored === null)
    return [{ ...whole, problem: "is not in the book any more", cause: { kind: "order gone" } }];
  if (seen === null)
    return [{ ...whole, problem: "is in the book already", cause: { kind: "order there already" } }];
  const fields = Object.keys(stored) as readonly (keyof Order)[];
  const shown = (order: OrderTerms, field: keyof Order): string | null => {
    const value = order[field];
    if (value === null) return null;
    const isInstant = field === "dueAt" || field === "earliestStartAt";
    return isInstant && typeof value === "number" ? localTextAt(timeZone, value) : String(value);
  };
  return fields
    .filter((field) => stored[field] !== seen[field])
    .map((field): FieldFault => {
      const versions = { now: shown(stored, field), seen: shown(seen, field) };
      return {
        path: `order ${id}, ${field}`,
        problem: `is ${versions.now ?? "empty"} now and was ${versions.seen ?? "empty"} when you looked`,
        remedy,
        cause: { kind: "order changed meanwhile", field, ...versions },
        record,
      };
    });
}
