import type { BookedOrder } from "@formweek/contracts";
import type { OrderColumn, OrderQuery } from "./order-rows.ts";

/** States of orders, those that need the planner first. */
export const orderStates: readonly BookedOrder["state"][] = [
  "late",
  "unplanned",
  "partly planned",
  "not planned yet",
  "on time",
  "covered by stock",
];

const columns: readonly OrderColumn[] = [
  "id",
  "customer",
  "productId",
  "pieces",
  "dueAt",
  "state",
  "finish",
  "slackSeconds",
];

/** Reads what an address asks of the order book. What it does not understand counts as not said. */
export function readOrderQuery(address: URLSearchParams): OrderQuery {
  const kind = address.get("kind");
  return {
    text: address.get("find") ?? "",
    state: orderStates.find((state) => state === address.get("state")) ?? null,
    customer: orNull(address.get("customer")),
    productId: orNull(address.get("product")),
    sheetId: orNull(address.get("sheet")),
    kind: kind === "firm" || kind === "forecast" ? kind : null,
    sort: {
      column: columns.find((column) => column === address.get("sort")) ?? "dueAt",
      isDescending: address.get("down") === "1",
    },
  };
}

/** The address of other wishes: `before` with the parameters of the order book set anew, and all others as they were. */
export function writeOrderQuery(query: OrderQuery, before: URLSearchParams): URLSearchParams {
  const next = new URLSearchParams(before);
  const set = (name: string, value: string | null): void => {
    if (value === null || value === "") next.delete(name);
    else next.set(name, value);
  };
  set("find", query.text);
  set("state", query.state);
  set("customer", query.customer);
  set("product", query.productId);
  set("sheet", query.sheetId);
  set("kind", query.kind);
  set("sort", query.sort.column === "dueAt" ? null : query.sort.column);
  set("down", query.sort.isDescending ? "1" : null);
  return next;
}

/** Wishes that every order meets. */
export const everyOrder = {
  text: "",
  state: null,
  customer: null,
  productId: null,
  sheetId: null,
  kind: null,
} as const satisfies Partial<OrderQuery>;

function orNull(text: string | null): string | null {
  return text === "" ? null : text;
}
