import type { OrderTerms } from "@formweek/contracts";
import { secondsOf } from "../kernels/board-plan.ts";
import type { OrderField } from "../kernels/order-terms.ts";
import type { Text } from "../text/text.ts";
import type { Format } from "./format.ts";

interface OrderWords {
  readonly text: Text;
  readonly format: Format;
  readonly productName: (productId: string) => string;
}

/** A field of an order as people read it. */
export function orderValue(
  order: OrderTerms,
  field: OrderField,
  { text, format, productName }: OrderWords,
): string {
  switch (field) {
    case "customer":
      return order.customer;
    case "kind":
      return order.kind === "forecast" ? text.orders.forecast : text.orders.firm;
    case "productId":
      return productName(order.productId);
    case "pieces":
      return format.count(order.pieces);
    case "weight":
      return `${order.weight}`;
    case "dueAt":
      return format.instant(secondsOf(order.dueAt));
    case "earliestStartAt":
      return order.earliestStartAt === null
        ? text.book.noValue
        : format.instant(secondsOf(order.earliestStartAt));
    case "underTolerance":
    case "overTolerance":
      return format.percentFine(order[field]);
    case "partsAllowed":
      return order.partsAllowed ? text.orders.yes : text.orders.no;
  }
}
