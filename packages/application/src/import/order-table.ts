import { column, optional } from "./column-spec.ts";
import type { TableSpec } from "./column-spec.ts";

/** The order book as a table. */
export const orderTable: TableSpec = {
  name: "orders",
  aliases: ["order book", "order list", "open orders", "sales orders"],
  columns: [
    column(
      ["order", "order no", "order number", "order id", "po", "sales order", "number"],
      "id",
      "text",
      "Order number; the same number again changes that order.",
    ),
    optional(
      column(
        ["customer", "customer name", "client", "ship to", "buyer"],
        "customer",
        "text",
        "Who it is for.",
      ),
      "—",
    ),
    column(
      [
        "product",
        "article",
        "item",
        "product id",
        "article no",
        "item no",
        "product number",
        "sku",
        "material",
      ],
      "productId",
      "text",
      "Product id or name.",
    ),
    column(
      ["pieces", "qty", "quantity", "order quantity", "pcs", "amount", "ordered"],
      "pieces",
      "whole",
      "Pieces wanted, at least 1.",
    ),
    column(
      ["due", "due date", "delivery date", "delivery", "ship by", "wanted", "required date", "deadline"],
      "due",
      "moment",
      "Day or day and time in the plant's zone; a day alone means its end.",
    ),
    optional(
      column(
        ["earliest start", "not before", "release", "start from"],
        "earliestStart",
        "moment",
        "Nothing runs before; a day alone means its first minute.",
      ),
      null,
    ),
    optional(
      column(
        ["weight", "priority", "importance"],
        "weight",
        "decimal",
        "How much an hour late counts, 1 is usual.",
      ),
      1,
    ),
    optional(column(["kind", "type", "status"], "kind", "text", "firm or forecast."), "firm"),
    optional(
      column(
        ["under tolerance", "under delivery", "tolerance minus"],
        "underTolerance",
        "share",
        "Share that may be missing.",
      ),
      0,
    ),
    optional(
      column(
        ["over tolerance", "over delivery", "tolerance plus"],
        "overTolerance",
        "share",
        "Share that may be too much.",
      ),
      0,
    ),
    optional(
      column(
        ["parts allowed", "part deliveries", "partial"],
        "partsAllowed",
        "yes-no",
        "May be delivered in parts.",
      ),
      false,
    ),
  ],
};
