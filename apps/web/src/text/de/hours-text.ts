import type { hoursText as english } from "../en/hours-text.ts";

/** Words of the plant's hours as a planner changes them: lines closed for a spell, shifts added on a day. */
export const hoursText: typeof english = {
  hours: {
    steps: {
      "close line": (line, reason) => `${line} gesperrt (${reason})`,
      "open line": (line) => `${line} wieder geöffnet`,
      "add shift": (shift, day) => `Schicht ${shift} am ${day} hinzugefügt`,
      "take shift back": (shift, day) => `Schicht ${shift} vom ${day} zurückgenommen`,
    },
    extraShift: (name) => `+ ${name}`,
    title: "Zeiten der Linie",
    runs: "Läuft",
    changes: "Wird gerüstet",
    stands: "Offen, ungenutzt",
    closed: "Geschlossen",
    hint: "Der Plan wird sofort neu gerechnet: Lose behalten Linie und Reihenfolge, was keinen Platz findet, ist nicht geplant.",
    leftOut: (n, count) =>
      n === 1 ? "1 Auftrag ist noch nicht geplant." : `${count} Aufträge sind noch nicht geplant.`,
    leftOutHint:
      "Es ist jetzt mehr Zeit da, der Plan wurde aber nur neu gerechnet; neu planen nimmt auf, was passt.",
    planThemIn: "Mit ihnen neu planen",
    close: "Zeitweise sperren…",
    add: "Schicht hinzufügen…",
    openAgain: "Wieder öffnen",
    takeBack: "Zurücknehmen",
    added: "Zusatzschichten",
    leave: "So lassen",
    closeTitle: "Linie zeitweise sperren",
    closeNow: "Linie sperren",
    closeHint: "Eine Sperre der Linie geht jeder Schicht vor. Zeiten sind die des Werks.",
    line: "Linie",
    from: "Von",
    to: "Bis",
    reason: "Grund",
    reasonHint: "Reparatur der Heizung",
    hits: (orders) => `Dann läuft dort: ${orders}.`,
    hitsNothing: "Dann läuft dort nichts.",
    addTitle: "Schicht an einem Tag hinzufügen",
    addNow: "Schicht hinzufügen",
    shift: "Schicht",
    shiftName: "Zusatzschicht",
    pattern: (name, start, end) => `${name}, ${start} bis ${end}`,
    otherHours: "Andere Zeiten",
    day: "Tag",
    lines: "Linien, die arbeiten",
    people: "Wer kommt",
    teamThere: (team) => `${team} (arbeitet dann ohnehin)`,
    headsMore: (pool, needed) =>
      `${pool}: Personen zusätzlich zu den anwesenden; die Linien brauchen ${needed}`,
    cautionTitle: "Lange Arbeit ermüdet",
    caution: "Ruhezeit und Wochenstunden aller, die kommen, prüfen, bevor die Schicht feststeht.",
    cautionLong:
      "Das ist lang, wenn dieselben Leute alles arbeiten. Andere Leute oder eine Ruhezeit einplanen; Müde verletzen sich an heißen Werkzeugen und Messern.",
    longFor: (name, stretch, week, rest) =>
      rest === null
        ? `${name}: ${stretch} am Stück, ${week} in der Woche.`
        : `${name}: ${stretch} am Stück, ${rest} Ruhe daneben, ${week} in der Woche.`,
    longLine: (name, week) => `${name}: ${week} in der Woche, das braucht mehrere Teams.`,
    cautionSource:
      "Die Richtlinie 2003/88/EG verlangt 11 h Ruhe am Tag und im Mittel 48 h in der Woche (aus dem Gedächtnis). Örtliches Recht, Vereinbarungen und Regeln des Betriebs gehen vor.",
  },
};
