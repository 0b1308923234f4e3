import type { BookedOrder } from "@formweek/contracts";

export type OrderColumn =
  "id" | "customer" | "productId" | "pieces" | "dueAt" | "state" | "finish" | "slackSeconds";

export interface OrderSort {
  readonly column: OrderColumn;
  readonly isDescending: boolean;
}

export interface OrderQuery {
  readonly text: string;
  readonly state: BookedOrder["state"] | null;
  readonly sort: OrderSort;
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
  productName: (productId: string) => string,
): readonly BookedOrder[] {
  const text = query.text.trim().toLowerCase();
  const matching = orders.filter(
    (order) =>
      (query.state === null || order.state === query.state) &&
      (text === "" ||
        `${order.id}\n${order.customer}\n${order.productId}\n${productName(order.productId)}`
          .toLowerCase()
          .includes(text)),
  );
  return matching.sort((a, b) => compareOrders(a, b, query.sort));
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
