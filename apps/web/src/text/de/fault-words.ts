import type { FaultCause, FieldFault } from "@formweek/contracts";
import type { Naming } from "../naming.ts";
import { bookText } from "./book-text.ts";
import { files } from "./file-words.ts";
import { pin, type PinCause } from "./pin-words.ts";
import { records } from "./record-words.ts";
import { boundOf, kindOfValue } from "./value-words.ts";

type Said = readonly [problem: string, remedy: string];

type Words<Kind> = (cause: Extract<FaultCause, { readonly kind: Kind }>, naming: Naming) => Said;

type Table = { readonly [Kind in FaultCause["kind"]]: Words<Kind> };

const always =
  (problem: string, remedy: string): (() => Said) =>
  () => [problem, remedy];

const otherRecord = "Jedem Datensatz eine eigene Nummer geben oder einen der beiden löschen.";
const byManual = "Den Wert berichtigen; das Handbuch beschreibt jede Spalte.";
const mouldClasses = "Die Klassen nach Masse ordnen und nur die Grenze der letzten leer lassen.";
const decide = "Entscheiden, welcher Stand gelten soll.";

const held = (cause: PinCause, naming: Naming): Said => pin(cause, naming);

const table: Table = {
  "no place named": held,
  "covered by stock": held,
  "no such line": held,
  "does not fit": held,
  "outside window": held,
  "before earliest start": held,
  closed: held,
  "unknown time zone": ({ zone }) => [
    `${zone} ist keine Zeitzone der IANA-Liste.`,
    "Die Zone mit Region und Stadt nennen, etwa Europe/Berlin.",
  ],
  "duplicate id": ({ of, id }) => [`${records[of].name} ${id} steht zweimal da.`, otherRecord],
  "duplicate polymer": ({ name }) => [
    `Die Eigenschaften von ${name} stehen zweimal da.`,
    "Je Werkstoff nur einmal Eigenschaften angeben.",
  ],
  "duplicate rate": ({ lineId, mouldId, productId }) => [
    `Eine Leistung für ${productId} mit ${mouldId} auf ${lineId} steht schon da.`,
    "Die behalten, die die Aufzeichnungen belegen.",
  ],
  "duplicate insert": ({ insertId }) => [
    `Der Einsatz ${insertId} steht zweimal da.`,
    "Jeden Einsatz einmal nennen.",
  ],
  "duplicate mould": ({ mouldId }) => [
    `Das Werkzeug ${mouldId} steht zweimal mit demselben Einsatz da.`,
    "Jedes Werkzeug mit jedem Einsatz einmal nennen.",
  ],
  "unknown reference": ({ to, id }) => [
    `„${id}“ ist ${records[to].no} dieses Werks.`,
    "Die Nummer berichtigen oder den Datensatz zuerst anlegen.",
  ],
  "unknown insert": ({ mouldId, insertId }) => [
    `Das Werkzeug ${mouldId} hat keinen Einsatz ${insertId}.`,
    "Die Nummer berichtigen oder den Einsatz zuerst anlegen.",
  ],
  "no such date": ({ date }) => [`${date} ist kein Tag des Kalenders.`, "Tag oder Monat berichtigen."],
  "ends before start": ({ from, to }) => [
    `Das Ende ${to} liegt nicht nach dem Beginn ${from}.`,
    "Das Ende nach den Beginn legen.",
  ],
  "break outside shift": ({ pause, shift }) => [
    `Die Pause ${pause} liegt nicht in der Schicht ${shift}.`,
    "Die Pause in die Schicht legen oder löschen.",
  ],
  "mounted in part": ({ mouldId }) => [
    mouldId === null
      ? "Ein Exemplar ist genannt, aber kein Werkzeug."
      : `Welches Exemplar von ${mouldId} dort hängt, ist nicht gesagt.`,
    "Werkzeug und Exemplar nennen oder keines von beiden.",
  ],
  "copy beyond copies": ({ place, copy, copies }) => [
    `Exemplar ${copy} soll ${place === "mounted" ? "dort hängen" : "außer Betrieb sein"}, es gibt aber nur ${copies}.`,
    `Ein Exemplar von 1 bis ${copies} nennen oder die Zahl der Exemplare berichtigen.`,
  ],
  "cycles beyond copies": ({ given, copies }) => [
    `Takte sind für ${given} Exemplare angegeben, es gibt aber nur ${copies}.`,
    `Höchstens ${copies} angeben, einen Wert je Exemplar.`,
  ],
  "copy mounted twice": ({ copy, mouldId, otherLineId }) => [
    `Exemplar ${copy} von ${mouldId} soll auch auf ${otherLineId} hängen.`,
    "Nachsehen, wo es hängt, und die andere Linie berichtigen.",
  ],
  "wrong table order": ({ depthMm }, { figure }) => [
    `Tiefe ${figure(depthMm)} mm ist nicht größer als die der Zeile davor.`,
    "Die Tabelle nach Tiefe ordnen und jede Tiefe einmal nennen.",
  ],
  "last mould class bounded": ({ massKg }, { figure }) => [
    `Werkzeuge über ${figure(massKg)} kg gehören zu keiner Klasse.`,
    mouldClasses,
  ],
  "mould class unbounded": always(
    "Diese Klasse hat keine Grenze, die Klassen danach gelten also nie.",
    mouldClasses,
  ),
  "wrong mould class order": ({ massKg }, { figure }) => [
    `${figure(massKg)} kg ist nicht mehr als die Klasse davor.`,
    mouldClasses,
  ],
  "two changeover sets": ({ lineId, otherSet }) => [
    lineId === null
      ? `Satz ${otherSet} gilt schon für alle Linien.`
      : `Linie ${lineId} steht schon in Satz ${otherSet}.`,
    "Für jede Linie nur einen Satz gelten lassen.",
  ],
  "no changeover rules": ({ lineId }) => [
    `Für Linie ${lineId} gelten keine Rüstregeln.`,
    "Die Linie in einem Satz nennen oder die Linien eines Satzes leer lassen, damit er für alle gilt.",
  ],
  "start after due": always(
    "Der früheste Beginn liegt nach dem Liefertermin.",
    "Früher beginnen lassen oder den Liefertermin verschieben.",
  ),
  "value missing": always("Der Wert fehlt.", "Ihn angeben."),
  "value of wrong kind": ({ expected }) => [
    `Der Wert hat die falsche Art; verlangt ist ${kindOfValue(expected)}.`,
    byManual,
  ],
  "value too small": (cause, { figure }) => [
    `Der Wert ist zu klein; verlangt ist ${boundOf(cause, figure)}.`,
    byManual,
  ],
  "value too large": (cause, { figure }) => [
    `Der Wert ist zu groß; verlangt ist ${boundOf(cause, figure)}.`,
    byManual,
  ],
  "value not listed": ({ listed }) => [
    "Der Wert gehört nicht zu denen, die hier stehen können.",
    `Einen von diesen schreiben: ${listed.join(", ")}.`,
  ],
  "fields unknown": ({ fields }) => [
    `Unbekannt ist hier: ${fields.join(", ")}.`,
    "Weglassen oder richtig benennen.",
  ],
  "value not allowed": always("Der Wert ist hier nicht möglich.", byManual),
  "line closed already": ({ lineId, from, to, reason }, { line }) => [
    `${line(lineId)} ist schon von ${from} bis ${to} geschlossen (${reason}).`,
    "Andere Zeiten wählen oder die Linie zuerst wieder öffnen.",
  ],
  "no such closure": always(
    "Die Linie hat keine solche Schließung.",
    "Ihre jetzigen Schließungen ansehen. Eine Schließung des Kalenders gilt für alle seine Linien: dagegen eine Schicht dazunehmen.",
  ),
  "shift for nobody": always(
    "Die Schicht nennt weder eine Linie noch jemanden, der kommt.",
    "Eine Linie, ein Rüstteam oder Bediener nennen.",
  ),
  "named twice": ({ id }) => [`„${id}“ steht zweimal da.`, "Nur einmal nennen."],
  "shift without length": ({ at }) => [
    `Die Schicht beginnt und endet um ${at}.`,
    "Ein anderes Ende nennen; einen ganzen Tag in mehreren Schichten arbeiten.",
  ],
  "hour skipped": ({ at, instead }) => [
    `${at} zeigt keine Uhr: Diese Stunde fällt bei der Zeitumstellung aus.`,
    `Eine andere Stunde wählen, etwa ${instead}.`,
  ],
  "line works already": ({ lineId, from, to }, { line }) => [
    `${line(lineId)} arbeitet schon von ${from} bis ${to}.`,
    "Stunden wählen, in denen die Linie nicht arbeitet, oder sie weglassen.",
  ],
  "no such added shift": ({ name, date }) => [
    `Die Zusatzschicht „${name}“ am ${date} gibt es nicht: Sie wurde schon zurückgenommen oder ist jetzt eine andere.`,
    "Die jetzigen Zusatzschichten ansehen.",
  ],
  "after plan": ({ planEnd }) => [
    `Es liegt nach ${planEnd}, wo der Plan endet.`,
    "Eine Zeit innerhalb des Plans wählen.",
  ],
  "over before plan": ({ over, planStart }) => [
    `Es ist um ${over} vorbei; der Plan beginnt um ${planStart}.`,
    "Eine Zeit wählen, die der Plan noch vor sich hat.",
  ],
  "no order named": always("Die Änderung nennt keinen Auftrag.", "Sagen, wie er war oder werden soll."),
  "order changed twice": always("Der Auftrag wird zweimal geändert.", "Jeden Auftrag einmal ändern."),
  "order gets another number": always(
    "Der Auftrag bekäme eine andere Nummer.",
    "Ihn entfernen und einen neuen mit dieser Nummer anlegen.",
  ),
  "order gone": always("Er ist nicht mehr im Bestand.", decide),
  "order there already": always("Er ist schon im Bestand.", decide),
  "order changed meanwhile": ({ field, now, seen }) => [
    `${fieldName(field)} ist jetzt ${now ?? "leer"} und war beim Ansehen ${seen ?? "leer"}.`,
    decide,
  ],
  "order frozen": ({ orderId, lineId, at }, { line, moment }) => [
    `Auftrag ${orderId} ist ${lineId === null ? "" : `auf ${line(lineId)} `}für ${moment(at)} freigegeben.`,
    "Einen anderen Platz wählen oder bestätigen, dass sich Festes verschieben darf.",
  ],
  "frozen end outside plan": ({ from, to }, { moment }) => [
    `Der Zeitpunkt liegt außerhalb des Plans, ${moment(from)} bis ${moment(to)}.`,
    "Einen Zeitpunkt nach dem Beginn und nicht nach dem Ende des Plans wählen, oder keinen.",
  ],
  "order not late": ({ orderId }) => [
    `Auftrag ${orderId} ist im Arbeitsplan nicht verspätet.`,
    "Einen verspäteten Auftrag wählen.",
  ],
  "nothing at place": ({ place }) => [
    `An der Stelle ${place} steht nichts zur Wahl.`,
    "Eine Stelle der Liste nennen.",
  ],
  "changed twice": ({ first }) => [
    `Dasselbe ändert schon die Änderung ${first}.`,
    "Beide zu einer machen oder eine weglassen.",
  ],
  "too many copies": ({ mouldId, copies, most }) => [
    `Vom Werkzeug ${mouldId} gibt es ${copies}; mehr als ${most} Exemplare sind nicht möglich.`,
    "Weniger Exemplare dazunehmen oder die Änderung weglassen.",
  ],
  "rate out of range": ({ least, most }, { figure }) => [
    `Verlangt sind ${figure(least)} bis ${figure(most)} Takte je Minute; mehr erlaubt das Werkzeug nicht.`,
    "Eine Taktzahl in diesen Grenzen nennen.",
  ],
  "mould not on line": ({ mouldId, lineId }, { line }) => [
    `${line(lineId)} kann mit dem Werkzeug ${mouldId} nichts herstellen.`,
    "Eine Linie wählen, auf der das Werkzeug läuft.",
  ],
  "spell too long": ({ mostDays }) => [
    `Der Zeitraum ist länger als ${mostDays} Tage.`,
    "Ihn früher enden lassen.",
  ],
  "run frozen": ({ orderId, lineId, at }, { line, moment }) => [
    `Auftrag ${orderId} läuft im freigegebenen Plan ab ${moment(at)} auf ${line(lineId)} und ist fest.`,
    "Den Zeitraum daneben legen, einen anderen Auftrag wählen oder die Änderung weglassen.",
  ],
  "order pinned": ({ orderId }) => [
    `Auftrag ${orderId} ist auf der Tafel festgehalten.`,
    "Ihn dort zuerst freigeben oder die Änderung weglassen.",
  ],
  "number taken": ({ orderId }) => [
    `Die Nummer ${orderId} hat schon ein Auftrag oder eine Reservierung.`,
    "Eine Nummer wählen, die kein Auftrag hat.",
  ],
  "order left as it is": ({ orderId }) => [
    `Auftrag ${orderId} bekommt weder eine andere Menge noch einen anderen Termin.`,
    "Eines von beiden nennen oder die Änderung weglassen.",
  ],
  "file unreadable": ({ code }) => files[code],
};

/** What a fault is, and what to do. */
export function fault(cause: FaultCause, naming: Naming): Said {
  // each entry takes the cause of its own kind
  const words = table[cause.kind] as Words<FaultCause["kind"]>;
  return words(cause, naming);
}

/** The record of a fault by its kind and name, else its path. */
export function placeOf({ record, path }: Pick<FieldFault, "record" | "path">): string {
  return record === undefined ? path : `${records[record.kind].name} ${record.name}`;
}

function fieldName(field: string): string {
  const names: Readonly<Record<string, string>> = bookText.book.fields;
  return names[field] ?? field;
}
