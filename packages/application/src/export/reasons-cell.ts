import type { PromiseReason } from "../promises/promise-answer.ts";
import type { Cell } from "../ports/table.ts";
import { textCell } from "./columns.ts";
import type { TableLanguage } from "./table-words.ts";

type Cause = NonNullable<PromiseReason["cause"]>;

const german = {
  "no line": "keine Linie kann ihn fertigen",
  "does not fit": "Werkzeug passt nicht",
  "no mould copy": "kein Werkzeugexemplar",
  "line open too short": "Linie zu kurz offen",
  "operators too short": "Bediener zu kurz da",
  "setters too short": "Rüstteam ohne Zeit",
  "longer than horizon": "Lauf länger als der Planungszeitraum",
  "ends after horizon": "endet nach dem Planungszeitraum",
  "starts after horizon": "beginnt nach dem Planungszeitraum",
  "no time left": "keine Zeit übrig",
  "starts too late": "begänne nach dem spätesten Beginn",
  "pinned too early": "zu früh festgehalten",
  "pinned to closed time": "zu geschlossener Zeit festgehalten",
  "pinned start taken": "festgehaltener Beginn belegt",
  "pinned to other line": "auf anderer Linie festgehalten",
  "sheet never arrives": "Folie trifft nie ein",
  "sheet used up": "Folie aufgebraucht",
  "taken out": "von Hand herausgenommen",
  "delays another": "verspätete einen anderen Auftrag",
} as const satisfies Readonly<Record<Cause["kind"], string>>;

/** Why an order is not made, most telling first, each with the line it is for: whole sentences in English, a few words in German. */
export function reasonsCell(reasons: readonly PromiseReason[], language: TableLanguage): Cell {
  const worded = reasons.map(({ lineId, text, cause }) => {
    const words = language === "de" && cause !== undefined ? german[cause.kind] : text;
    return lineId === null ? words : `${lineId}: ${words}`;
  });
  return textCell(worded.join(language === "de" ? "; " : " "));
}
