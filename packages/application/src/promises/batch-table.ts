import { type Column, hoursCell, momentCell, offsetCell, tableBy, textCell } from "../export/columns.ts";
import { reasonsCell } from "../export/reasons-cell.ts";
import { type TableLanguage, tableWord } from "../export/table-words.ts";
import type { Table } from "../ports/table.ts";
import type { AnsweredBatch, BatchedEnquiry } from "./answer-batch.ts";
import type { Offer } from "./promise-answer.ts";

/** Answers to many enquiries as a table to take away, one a row; times are the plant's clock, its zone stands beside them. */
export function batchTable(
  { answers, currency }: AnsweredBatch,
  timeZone: string,
  language: TableLanguage,
): Table {
  const offerOf = ({ outcome }: BatchedEnquiry): Offer | null =>
    outcome.status === "promised" ? outcome.offer : null;
  const promisedOf = (answer: BatchedEnquiry): string | null => {
    const { outcome } = answer;
    return outcome.status === "from stock" ? outcome.promised : (offerOf(answer)?.promised ?? null);
  };
  const firstPart = (answer: BatchedEnquiry) => offerOf(answer)?.parts[0] ?? null;
  const columns: readonly Column<BatchedEnquiry>[] = [
    ["row", ({ row }) => row],
    ["enquiry", ({ reference }) => textCell(reference)],
    ["product", ({ enquiry }) => enquiry.productId],
    ["product name", ({ enquiry }) => enquiry.productName],
    ["pieces", ({ enquiry }) => enquiry.pieces],
    ["wanted", ({ enquiry }) => momentCell(timeZone, enquiry.wantedAt)],
    ["parts allowed", ({ enquiry }) => tableWord(enquiry.partsAllowed ? "yes" : "no", language)],
    ["answer", ({ outcome }) => tableWord(outcome.status, language)],
    ["promised", (answer) => momentCell(timeZone, promisedOf(answer))],
    ["slack hours", (answer) => hoursCell(offerOf(answer)?.slackSeconds ?? null)],
    ["from stock pieces", ({ quantity }) => quantity.fromStockPieces],
    ["to make pieces", ({ quantity }) => quantity.toMakePieces],
    ["line", (answer) => firstPart(answer)?.lineId ?? null],
    ["mould", (answer) => firstPart(answer)?.mould?.mouldId ?? null],
    ["start", (answer) => momentCell(timeZone, firstPart(answer)?.start ?? null)],
    ["end", (answer) => momentCell(timeZone, firstPart(answer)?.end ?? null)],
    ["change min", (answer) => firstPart(answer)?.change?.minutes ?? null],
    [
      "rate",
      (answer) => {
        const part = firstPart(answer);
        return part === null ? null : tableWord(part.rate.basis.kind, language);
      },
    ],
    ["price", (answer) => offerOf(answer)?.price.cost ?? null],
    ["currency", () => currency],
    [
      "not possible because",
      ({ outcome }) => (outcome.status === "impossible" ? reasonsCell(outcome.reasons, language) : null),
    ],
    ["time zone", () => timeZone],
    ["promised with offset", (answer) => offsetCell(timeZone, promisedOf(answer))],
  ];
  return tableBy({ name: "promises", columns, language }, answers);
}
