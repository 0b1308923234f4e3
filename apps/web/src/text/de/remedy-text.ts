import type { remedyText as english } from "../en/remedy-text.ts";

/** Words of what would help a late order. */
export const remedyText: typeof english = {
  remedies: {
    title: "Was helfen würde",
    find: "Suchen, was helfen würde",
    findHint:
      "Andere Plätze, längeres Suchen, zusätzliche Stunden, Werkzeuge und Linien werden der Reihe nach versucht, jedes wirklich geplant. Dauert etwa 15 Sekunden.",
    busy: "Die Planung arbeitet an etwas anderem; das Ende abwarten oder sie oben anhalten.",
    looking: (done) => `Eines nach dem anderen wird versucht: ${done} erledigt…`,
    starting: "Wartet auf den Anfang…",
    progress: "Suche nach dem, was hilft",
    stop: "Anhalten und Gefundenes behalten",
    stopping: "Wird angehalten…",
    again: "Noch einmal suchen",
    outdated: "Der Plan hat sich geändert, seit danach gesucht wurde.",
    nothing: (n) => `${n} Dinge wurden versucht, keines davon hilft.`,
    tried: (n) =>
      `${n} Dinge wurden versucht; diese helfen. Zuerst steht, was der Plan allein hergibt, dann, was Menschen ändern müssen.`,
    stopped: "Die Suche wurde vorzeitig angehalten: Es kann mehr geben.",
    failed: "Die Suche ist gescheitert.",
    apply: "Anwenden",
    applyWhat: (what) => `Anwenden: ${what}`,
    before: "Jetzt",
    after: "Dann",
    figure: "Kennzahl",
    thisOrder: "Dieser Auftrag verspätet",
    lateOrders: "Verspätete Aufträge",
    lateness: "Alle Verspätung",
    changes: "Rüsten",
    overtime: "Überstunden",
    notPlanned: "Nicht geplant",
    cost: "Kosten",
    onTime: "pünktlich",
    leftOut: "nicht geplant",
    priceNote:
      "Was eine Abhilfe selbst kostet, steckt nicht in den Kosten; nur Überstunden, wo das Werk einen Preis dafür hat.",
    shiftNote:
      "Längere oder zusätzliche Schichten: Arbeitszeitrecht, Ruhezeiten und Vereinbarungen am Ort entscheiden. Die fragen, die dafür einstehen.",
    byPeople: "Von Menschen zu tun",
    actions: {
      move: (line, before) => `Auf ${line} laufen lassen, vor Auftrag ${before}`,
      moveLast: (line) => `Auf ${line} laufen lassen, am Ende`,
      edit: "Den Plan von Hand ändern",
      shift: (who, date, start, end) => `Zusatzschicht für ${who} am ${date}, ${start} bis ${end}`,
      operatorShift: (date, start, end) => `Mehr Bediener am ${date}, ${start} bis ${end}`,
      "plan on": "Von diesem Plan aus weitersuchen lassen",
      "extra shift": (line, from, to) => `${line} von ${from} bis ${to} arbeiten lassen, mit Bedienern`,
      "extra team": (from, to) => `Ein Rüstteam mehr von ${from} bis ${to}`,
      "extra operators": (heads, from, to) => `${heads} Bediener mehr von ${from} bis ${to}`,
      "mould copy": (mould) => `Ein zweiter Satz von ${mould}`,
      "another line": (line) => `Für ${line} freigeben`,
      lots: (n) => `In ${n === 2 ? "zwei" : `bis zu ${n}`} Losen fertigen lassen`,
      "earlier start": (at) => `Ab ${at} beginnen lassen`,
      "later due": (at) => `Bis ${at} liefern, mit dem Plan wie er ist`,
      "earlier sheet": (sheet, hours) => `Folie ${sheet} ${hours} früher beschaffen`,
    },
    who: {
      "extra shift": "Die Werkleitung trägt die Schicht in den Kalender der Linie ein, dann neu planen.",
      "extra team": "Die Werkleitung trägt die Stunden des Teams ein, dann neu planen.",
      "extra operators": "Die Werkleitung trägt die Stunden der Bediener ein, dann neu planen.",
      "mould copy":
        "Den Werkzeugbau fragen, ob ein zweiter Satz zu haben ist; er wird dann beim Werkzeug eingetragen.",
      "another line":
        "Die fragen, die Werkzeuge für Linien freigeben; die Freigabe wird dann beim Werkzeug eingetragen.",
      lots: "Den Kunden fragen, ob in Teilen geliefert werden darf; dann beim Auftrag Teile erlauben.",
      "earlier start": "Fragen, worauf der Auftrag wartet; dann seinen frühesten Beginn im Auftrag ändern.",
      "later due": "Den Kunden fragen, ob der spätere Termin geht; sonst wird nichts verschoben.",
      "earlier sheet":
        "Einkauf oder Extrusion danach fragen; der Eingang wird dann bei der Folie eingetragen.",
    },
    changeOrder: { "later due": "Diesen Liefertermin setzen", lots: "Teile erlauben" },
    orderChanged:
      "Der Auftrag ist geändert. Neu planen nimmt es auf; Rückgängig im Auftragsbestand nimmt es zurück.",
    toCalendars: "Zu den Kalendern",
    toCrews: "Zum Personal",
    toMoulds: "Zu den Werkzeugen",
    toSheets: "Zu den Folien",
    toOrders: "Zum Auftragsbestand",
  },
};
