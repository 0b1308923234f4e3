import type { RecordKind } from "@formweek/contracts";

/** A kind of record alone, and after "is". */
interface RecordWords {
  readonly name: string;
  readonly no: string;
}

/** Kinds of records as faults name them. */
export const records: Readonly<Record<RecordKind, RecordWords>> = {
  plant: { name: "Werk", no: "kein Werk" },
  calendar: { name: "Kalender", no: "kein Kalender" },
  line: { name: "Linie", no: "keine Linie" },
  "closure of line": { name: "Schließung der Linie", no: "keine Schließung" },
  "added shift": { name: "Zusatzschicht", no: "keine Zusatzschicht" },
  mould: { name: "Werkzeug", no: "kein Werkzeug" },
  sheet: { name: "Folie", no: "keine Folie" },
  product: { name: "Artikel", no: "kein Artikel" },
  order: { name: "Auftrag", no: "kein Auftrag" },
  polymer: { name: "Werkstoff", no: "kein Werkstoff" },
  "proven rate": { name: "Gemessene Leistung", no: "keine gemessene Leistung" },
  "setter team": { name: "Rüstteam", no: "kein Rüstteam" },
  trolley: { name: "Werkzeugwagen", no: "kein Werkzeugwagen" },
  "operator pool": { name: "Bedienergruppe", no: "keine Bedienergruppe" },
  "changeover rules": { name: "Rüstregeln", no: "keine Rüstregeln" },
};
