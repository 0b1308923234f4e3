/** Languages in which people can take tables away. */
export type TableLanguage = "en" | "de";

const german = {
  plan: "Plan",
  "order book": "Auftragsbestand",
  order: "Auftrag",
  lot: "Los",
  customer: "Kunde",
  product: "Artikel",
  "product name": "Artikelname",
  line: "Linie",
  "line name": "Linienname",
  mould: "Werkzeug",
  "mould copy": "Werkzeugexemplar",
  "mould name": "Werkzeugname",
  sheet: "Folie",
  "sheet name": "Folienname",
  kind: "Art",
  pieces: "Stück",
  start: "Beginn",
  end: "Ende",
  "lot finish": "Los fertig",
  "earliest start": "frühester Beginn",
  due: "Liefertermin",
  "order hours late": "Auftrag verspätet h",
  "change before min": "Rüsten davor min",
  "setter team": "Rüstteam",
  state: "Stand",
  "planned finish": "geplant fertig",
  "slack hours": "Puffer h",
  "covered by stock pieces": "aus Bestand Stück",
  "to make pieces": "zu fertigen Stück",
  "unplanned because": "nicht geplant, weil",
  "time zone": "Zeitzone",
  "start with offset": "Beginn mit UTC-Abstand",
  "end with offset": "Ende mit UTC-Abstand",
  "lot finish with offset": "Los fertig mit UTC-Abstand",
  "due with offset": "Liefertermin mit UTC-Abstand",
  "planned finish with offset": "geplant fertig mit UTC-Abstand",
  firm: "fest",
  forecast: "Vorschau",
  "on time": "pünktlich",
  late: "verspätet",
  "covered by stock": "aus Bestand",
  unplanned: "nicht geplant",
  "partly planned": "teilweise geplant",
  "not planned yet": "noch nicht geplant",
} as const;

/** Headings, states and kinds of the tables that people take away, in English. */
export type TableWord = keyof typeof german;

/** The word in the reader's language. */
export function tableWord(word: TableWord, language: TableLanguage): string {
  return language === "en" ? word : german[word];
}
