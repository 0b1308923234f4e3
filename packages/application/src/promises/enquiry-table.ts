import { column, optional } from "../import/column-spec.ts";
import type { TableSpec } from "../import/column-spec.ts";

/** Enquiries as a table, one a row. */
export const enquiryTable: TableSpec = {
  name: "enquiries",
  aliases: ["enquiry", "inquiries", "requests", "quotes"],
  columns: [
    optional(
      column(
        ["enquiry", "reference", "number", "enquiry no", "inquiry"],
        "reference",
        "text",
        "What the answer is called; any text.",
      ),
      "",
    ),
    column(
      ["product", "article", "item", "product id", "article no", "sku", "material"],
      "product",
      "text",
      "Product id or name.",
    ),
    column(["pieces", "qty", "quantity", "pcs", "amount"], "pieces", "whole", "Pieces wanted, at least 1."),
    optional(
      column(
        ["wanted", "due", "delivery date", "delivery", "wanted by", "deadline"],
        "wanted",
        "moment",
        "Day or day and time in the plant's zone; a day alone means its end.",
      ),
      null,
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
