import type { BookedOrder } from "@formweek/contracts";
import type { NameOrder } from "./name-order.ts";
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

/** What text columns are sorted by. */
export interface SortedBy extends ProductNames {
  readonly names: NameOrder;
  readonly stateName: (state: BookedOrder["state"]) => string;
}

/** How many orders are in each state. */
export function countStates(orders: readonly BookedOrder[]): ReadonlyMap<BookedOrder["state"], number> {
  const counts = new Map<BookedOrder["state"], number>();
  for (const order of orders) counts.set(order.state, (counts.get(order.state) ?? 0) + 1);
  return counts;
}

/**
 * Orders that match, sorted as the reader's locale has it. Text is looked for in number, customer and product name; empty
 * values come last in either direction; ties stay as they came, by order number (`byNumber`).
 */
export function orderRows(
  orders: readonly BookedOrder[],
  query: OrderQuery,
  shown: SortedBy,
): readonly BookedOrder[] {
  const { productName, sheetOf } = shown;
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
  const { column, isDescending } = query.sort;
  const compare = comparison(column, shown);
  return matching.sort((a, b) => {
    const isEmpty = a[column] === null;
    if (isEmpty !== (b[column] === null)) return isEmpty ? 1 : -1;
    return isEmpty ? 0 : isDescending ? compare(b, a) : compare(a, b);
  });
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

/** Text columns as they are shown; figures and instants by their value. */
function comparison(
  column: OrderColumn,
  { names, productName, stateName }: SortedBy,
): (a: BookedOrder, b: BookedOrder) => number {
  switch (column) {
    case "id":
    case "customer":
      return (a, b) => names.compare(a[column], b[column]);
    case "productId":
      return (a, b) => names.compare(productName(a.productId), productName(b.productId));
    case "state":
      return (a, b) => names.compare(stateName(a.state), stateName(b.state));
    default:
      return (a, b) => byValue(a[column] ?? 0, b[column] ?? 0);
  }
}

function byValue(one: string | number, other: string | number): number {
  return one < other ? -1 : one > other ? 1 : 0;
}

/** All orders by number: the sequence that those keep which are alike in what they are sorted by. */
export function byNumber(orders: readonly BookedOrder[], names: NameOrder): readonly BookedOrder[] {
  return orders.toSorted((a, b) => names.compare(a.id, b.id));
}
