import type { ImportFaultCode } from "@formweek/contracts";

type Words = (values: Readonly<Record<string, string>>) => readonly [problem: string, remedy: string];

const always =
  (problem: string, remedy: string): Words =>
  () => [problem, remedy];

const dateRemedy = "Als 2026-11-30 oder 2026-11-30 14:00 schreiben.";
const wholeRemedy = "Nur Ziffern schreiben, zum Beispiel 185000.";

/** What a fault of an imported file says; the sentence begins with the place of the fault. */
export const importFaults: Readonly<Record<ImportFaultCode, Words>> = {
  "neither-yes-nor-no": always("ist weder ja noch nein", "yes oder no schreiben."),
  "no-whole-number": always("ist keine ganze Zahl", wholeRemedy),
  "no-count": always("ist keine Zahl", wholeRemedy),
  "no-number": always("ist keine Zahl", "Ziffern schreiben, zum Beispiel 1.2."),
  "thousand-or-fraction": ({ whole = "", fraction = "" }) => [
    "kann ein Tausender oder ein Bruch sein",
    `${whole} oder ${fraction} schreiben.`,
  ],
  "spreadsheet-error": ({ mark = "" }) => [
    `enthält den Tabellenfehler ${mark}`,
    "Die Formel berichtigen oder den Wert schreiben.",
  ],
  "formula-not-computed": always(
    "enthält eine Formel ohne berechneten Wert",
    "Die Datei in einem Tabellenprogramm öffnen, speichern und noch einmal laden.",
  ),
  "control-characters": always(
    "enthält Steuerzeichen",
    "Den Text ohne Zeilenumbrüche und Tabulatoren neu schreiben.",
  ),
  "no-weekdays": always("nennt keine Wochentage", "Als Mon-Fri oder Sun,Mon schreiben."),
  "no-break": ({ part = "" }) => [
    `enthält „${part}“, das ist keine Pause`,
    "Pausen als 09:30-10:00; 12:00-12:30 schreiben.",
  ],
  "no-heads": ({ part = "" }) => [
    `enthält „${part}“, das ist keine Gruppe mit ihrer Personenzahl`,
    "Gruppen mit Personenzahl als packers/2; loaders/0.5 schreiben.",
  ],
  "no-mould": always("nennt kein Werkzeug", "Werkzeugnummern als M1; M2/Einsatz schreiben."),
  "no-date": always("ist kein Datum", dateRemedy),
  "day-or-month-first": always("kann Tag/Monat oder Monat/Tag sein", dateRemedy),
  "no-calendar-day": always("ist kein Tag des Kalenders", dateRemedy),
  "time-unreadable": always("hat eine Uhrzeit, die nicht lesbar ist", dateRemedy),
  "number-for-date": always("ist eine Zahl, kein Datum", dateRemedy),
  "time-for-day": always("enthält eine Uhrzeit, wo ein Tag verlangt ist", "Als 2026-11-30 schreiben."),
  "no-time-of-day": always("ist keine Uhrzeit", "Als 06:00 schreiben."),
  "read-as-date": ({ day = "" }) => [
    `wurde als Datum ${day} gelesen`,
    "Prüfen; sicher ist ein Datum als 2026-11-30.",
  ],
  blank: always("ist leer", "Ausfüllen; das Handbuch beschreibt jede Spalte."),
  "unknown-column": always(
    "ist keine bekannte Spalte und wird weggelassen",
    "Umbenennen, falls sie etwas Nötiges enthält.",
  ),
  "same-column": ({ column = "" }) => [
    `bedeutet dasselbe wie die Spalte „${column}“`,
    "Eine der beiden Spalten behalten.",
  ],
  "missing-columns": ({ columns = "" }) => [
    `hat keine Spalte ${columns}`,
    "Die Spalte ergänzen oder in der Kopfzeile so nennen.",
  ],
  "no-orders-on-sheet": always(
    "enthält keine Auftragstabelle und wird weggelassen",
    "Nichts zu tun, wenn das richtig ist.",
  ),
  "no-plant-data-on-sheet": ({ known = "" }) => [
    "ist keine Tabelle mit Werksdaten und wird weggelassen",
    `Nach dem Inhalt benennen: ${known}.`,
  ],
  "repeated-order": ({ row = "", sheet = "" }) => [
    `steht schon in Zeile ${row} von ${sheet}`,
    "Jedem Auftrag eine Zeile geben; die Stückzahlen zusammenzählen oder die Teile nummerieren.",
  ],
  "repeated-record": ({ row = "" }) => [
    `steht schon in Zeile ${row}`,
    "Für jeden Datensatz eine Zeile behalten.",
  ],
  "parent-missing": ({ parent = "" }) => [
    `nennt ${parent}, das es nicht gibt`,
    "Den zugehörigen Datensatz ergänzen oder die Nummer berichtigen.",
  ],
  "other-plant": ({ plant = "" }) => [
    `ist nicht ${plant}, das Werk in Arbeit`,
    `${plant} schreiben oder als neues Werk laden.`,
  ],
  "unknown-product": ({ nearest = "" }) => [
    "ist kein Artikel dieses Werks",
    nearest === ""
      ? "Den Artikel zuerst im Werk anlegen oder den Namen berichtigen."
      : `Gemeint ist vielleicht ${nearest.split("; ").join(" oder ")}. Sonst den Artikel zuerst im Werk anlegen.`,
  ],
  "due-before-planning": always(
    "liegt vor dem Planungsbeginn, der Auftrag ist also schon verspätet",
    "Berichtigen, falls es ein Versehen ist.",
  ),
};
