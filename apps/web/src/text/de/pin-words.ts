import type { FaultCause } from "@formweek/contracts";
import type { Naming } from "../naming.ts";
import { misfit } from "./causes-text.ts";

const otherLine = "Eine Linie wählen, die den Auftrag fertigen kann.";

const pinKinds = [
  "no place named",
  "covered by stock",
  "no such line",
  "does not fit",
  "outside window",
  "before earliest start",
  "closed",
] as const satisfies readonly FaultCause["kind"][];

/** What stands against holding an order at a place. */
export type PinCause = Extract<FaultCause, { readonly kind: (typeof pinKinds)[number] }>;

/** Whether a fault is one of a place to hold an order at. */
export function isPin(cause: FaultCause): cause is PinCause {
  return (pinKinds as readonly string[]).includes(cause.kind);
}

/** Why an order cannot be held at a place, and what to do. */
export function pin(cause: PinCause, naming: Naming): readonly [problem: string, remedy: string] {
  switch (cause.kind) {
    case "no place named":
      return ["Weder Linie noch Beginn ist genannt.", "Eine Linie, einen Beginn oder beides nennen."];
    case "covered by stock":
      return [
        "Der Bestand deckt den Auftrag: Nichts davon läuft.",
        "Nichts festzuhalten; den Bestand des Artikels berichtigen, falls doch zu fertigen ist.",
      ];
    case "no such line":
      return [`Die Linie ${cause.lineId} gibt es in diesem Werk nicht.`, otherLine];
    case "does not fit":
      return [
        misfit(cause.check, cause.compared, naming) ?? "Das Werkzeug passt nicht auf diese Linie.",
        cause.check === "approval"
          ? "Das Werkzeug dort freigeben lassen und eintragen, oder eine andere Linie wählen."
          : otherLine,
      ];
    case "outside window":
      return [
        `Der Beginn liegt außerhalb des Planungszeitraums, ${naming.moment(cause.from)} bis ${naming.moment(cause.to)}.`,
        "Einen Beginn in diesem Zeitraum wählen.",
      ];
    case "before earliest start":
      return [
        `Der Beginn liegt vor dem frühesten Beginn des Auftrags, ${naming.moment(cause.earliest)}.`,
        "Einen späteren Beginn wählen oder den frühesten Beginn des Auftrags ändern.",
      ];
    case "closed":
      return [
        "Zu diesem Beginn ist keine mögliche Linie offen.",
        cause.next === null
          ? "Einen früheren Beginn wählen: Im Planungszeitraum ist keine Arbeitszeit mehr übrig."
          : `Einen Beginn in der Arbeitszeit wählen; die nächste ist ${naming.moment(cause.next)}.`,
      ];
  }
}
