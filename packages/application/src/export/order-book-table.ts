import type { Table } from "../ports/table.ts";
import type { BookedOrder } from "../queries/get-order-book.ts";
import { type Column, hoursCell, momentCell, offsetCell, tableBy, textCell } from "./columns.ts";
import { reasonsCell } from "./reasons-cell.ts";
import { type TableLanguage, tableWord } from "./table-words.ts";

/**
 * The order book with what the newest plan says about each order, in the order given. Times are the plant's clock, with its
 * zone beside them. `productNames`: product id → name.
 */
export function orderBookTable(
  orders: readonly BookedOrder[],
  plant: { readonly timeZone: string; readonly productNames: ReadonlyMap<string, string> },
  language: TableLanguage,
): Table {
  const { timeZone, productNames } = plant;
  const columns: readonly Column<BookedOrder>[] = [
    ["order", ({ id }) => id],
    ["customer", ({ customer }) => textCell(customer)],
    ["product", ({ productId }) => productId],
    ["product name", ({ productId }) => productNames.get(productId) ?? null],
    ["kind", ({ kind }) => tableWord(kind, language)],
    ["pieces", ({ pieces }) => pieces],
    ["earliest start", ({ earliestStartAt }) => momentCell(timeZone, earliestStartAt)],
    ["due", ({ dueAt }) => momentCell(timeZone, dueAt)],
    ["state", ({ state }) => tableWord(state, language)],
    ["planned finish", ({ finish }) => momentCell(timeZone, finish)],
    ["slack hours", ({ slackSeconds }) => hoursCell(slackSeconds)],
    ["covered by stock pieces", ({ fromStockPieces }) => fromStockPieces],
    ["to make pieces", ({ toMakePieces }) => toMakePieces],
    ["unplanned because", ({ reasons }) => reasonsCell(reasons, language)],
    ["time zone", () => timeZone],
    ["due with offset", ({ dueAt }) => offsetCell(timeZone, dueAt)],
    ["planned finish with offset", ({ finish }) => offsetCell(timeZone, finish)],
  ];
  return tableBy({ name: "order book", columns, language }, orders);
}
