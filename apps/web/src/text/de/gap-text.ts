import type { gapText as english } from "../en/gap-text.ts";

/** Words of the free time of a line: what it waits for. */
export const gapText: typeof english = {
  gap: {
    title: "Worauf sie wartet",
    working: "Wird ausgerechnet…",
    notKnown:
      "Werk, Aufträge oder gehaltene Aufträge haben sich geändert, seit dieser Plan entstand. Neu planen, um es zu sehen.",
    next: "Danach kommt:",
    until: (length, until) => `${length}, bis ${until}`,
    besides: "Auch darauf würde sie warten, nur nicht so lange:",
    besideUntil: (what, until) => `${what} Bis ${until}.`,
    nothingMore: "Auf dieser Linie ist nichts mehr geplant.",
    nothingFits: "Kein Auftrag, der später beginnt, passt auf sie.",
    fitHere: (n) =>
      n === 1
        ? "1 Auftrag, der auf sie passt, beginnt später auf einer anderen Linie oder ist nicht geplant:"
        : `${n} Aufträge, die auf sie passen, beginnen später auf anderen Linien oder sind nicht geplant, der späteste zuerst:`,
    before: (length) => `${length} frei davor: warum?`,
    after: (length) => `${length} frei danach: warum?`,
    causes: {
      "line closed": "Die Linie ist geschlossen.",
      "no operators": "Bediener fehlen: Andere Linien haben sie.",
      "stop too near":
        "Die Linie schließt bald: Das neue Aufheizen nach dem Halt würde länger dauern als der Lauf davor.",
      "other work first": "Hier steht nichts entgegen; der Plan zieht andere Arbeit vor.",
      "line free": "Die Linie ist noch mit Arbeit von vor dem Plan belegt.",
      "mould arrives": "Das Werkzeug ist noch nicht im Werk.",
      "setters off": (team) => `${team}: nicht in der Schicht.`,
      "setters busy": (team, line) => `${team}: beim Rüsten auf ${line}.`,
      "trolley busy": (trolley, line) => `${trolley}: beim Rüsten auf ${line}.`,
      "mould elsewhere": (mould, line) => `${mould} hängt auf ${line}.`,
      "mould for order": (mould, line, order) => `${mould} hängt auf ${line}, für Auftrag ${order}.`,
      "mould carried": (mould) => `${mould} ist auf dem Weg hierher.`,
      "mould out of service": (mould) => `${mould} ist außer Betrieb.`,
      "sheet arrival": (sheet) => `Die Folie ${sheet} ist noch nicht da.`,
      "earliest start": (order) => `Auftrag ${order} darf nicht früher beginnen.`,
      "pinned start": (order) => `Auftrag ${order} wird auf seinem Beginn gehalten.`,
    },
  },
};
