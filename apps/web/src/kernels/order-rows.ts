import type { BookedOrder } from "@formweek/contracts";
import { byName, type FilterChoice } from "./filter-choice.ts";

export type OrderColumn =
  "id" | "customer" | "productId" | "pieces" | "dueAt" | "state" | "finish" | "slackSeconds";

export interface OrderSort {
  readonly column: OrderColumn;
  readonly isDescending: boolean;
}

/** Which orders are wanted, and in which sequence; null and an empty text want all. */
export interface OrderQuery {
  readonly text: string;
  readonly state: BookedOrder["state"] | null;
  readonly customer: string | null;
  readonly productId: string | null;
  readonly sheetId: string | null;
  readonly kind: BookedOrder["kind"] | null;
  readonly sort: OrderSort;
}

/** What the plant says about products. */
export interface ProductNames {
  readonly productName: (productId: string) => string;
  /** Sheet that a product is made from; null where the plant does not know the product. */
  readonly sheetOf: (productId: string) => string | null;
}

/** How many orders are in each state. */
export function countStates(orders: readonly BookedOrder[]): ReadonlyMap<BookedOrder["state"], number> {
  const counts = new Map<BookedOrder["state"], number>();
  for (const order of orders) counts.set(order.state, (counts.get(order.state) ?? 0) + 1);
  return counts;
}

/**
 * Orders that match, sorted. Text is looked for in number, customer and product name; empty values come last in either
 * direction; ties go by order number.
 */
export function orderRows(
  orders: readonly BookedOrder[],
  query: OrderQuery,
  { productName, sheetOf }: ProductNames,
): readonly BookedOrder[] {
  const text = query.text.trim().toLowerCase();
  const { state, customer, productId, sheetId, kind } = query;
  const matching = orders.filter(
    (order) =>
      (state === null || order.state === state) &&
      (customer === null || order.customer === customer) &&
      (productId === null || order.productId === productId) &&
      (sheetId === null || sheetOf(order.productId) === sheetId) &&
      (kind === null || order.kind === kind) &&
      (text === "" ||
        `${order.id}\n${order.customer}\n${order.productId}\n${productName(order.productId)}`
          .toLowerCase()
          .includes(text)),
  );
  return matching.sort((a, b) => compareOrders(a, b, query.sort));
}

/** What the book can be filtered by: id and name, by name. */
interface OrderChoices {
  readonly customer: readonly FilterChoice[];
  readonly productId: readonly FilterChoice[];
  readonly sheetId: readonly FilterChoice[];
}

/** Customers, products and sheets of the orders in a book. */
export function orderChoices(
  orders: readonly BookedOrder[],
  { productName, sheetOf }: ProductNames,
  sheetName: (sheetId: string) => string,
): OrderChoices {
  const products = new Set(orders.map(({ productId }) => productId));
  const sheets = new Set([...products].map(sheetOf).filter((sheetId) => sheetId !== null));
  return {
    customer: byName(orders.map(({ customer }) => [customer, customer])),
    productId: byName([...products].map((id) => [id, productName(id)])),
    sheetId: byName([...sheets].map((id) => [id, sheetName(id)])),
  };
}

function compareOrders(a: BookedOrder, b: BookedOrder, { column, isDescending }: OrderSort): number {
  const [left, right] = [a[column], b[column]];
  if (left === null || right === null) {
    if (left !== right) return left === null ? 1 : -1;
  } else if (left !== right) {
    const ascending = left < right ? -1 : 1;
    return isDescending ? -ascending : ascending;
  }
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}
