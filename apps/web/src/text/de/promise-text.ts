import type { promiseText as english } from "../en/promise-text.ts";

/** Words of the page for sales: what a customer asks for, when it can be ready, and what is held for whom. */
export const promiseText: typeof english = {
  promise: {
    title: "Zusage",
    sections: "Arten der Anfrage",
    one: "Eine Anfrage",
    many: "Viele zugleich",
    lead: "Wann kann es fertig sein?",
    product: "Artikel",
    productHint: "Name, Nummer oder Farbe",
    products: "Gefundene Artikel",
    noProduct: "Kein Artikel hat diese Wörter.",
    moreProducts: (n) => `und ${n} weitere: mehr eingeben`,
    chooseProduct: "Einen der gefundenen Artikel wählen.",
    nearest: "Gemeint vielleicht:",
    pieces: "Stück",
    piecesHint: "40 000 oder 40k",
    piecesWrong: "Ganze Stück von 1 bis 1.000.000.000 eingeben.",
    day: "Gewünscht bis",
    time: "Um",
    timeHint: "Leer: bis zum Ende des Tages",
    endOf: (day) => `Ende ${day}`,
    parts: "Teillieferung möglich",
    clear: "Neue Anfrage",
    copyLink: "Link kopieren",
    linkCopied: "Link kopiert",
    linkHint: "Der Link öffnet diese Anfrage bei Kollegen",
    waiting: "Artikel und Stückzahl eingeben; die Antwort erscheint hier.",
    asking: "Wird ausgerechnet…",
    answer: "Antwort",
    ready: "Versandbereit",
    inTime: (spare) => `rechtzeitig, ${spare} Luft`,
    justInTime: "gerade rechtzeitig",
    tooLate: (by) => `${by} nach dem Wunschtermin`,
    earliest: "so früh wie möglich, ohne dass jemand anderes später dran ist",
    fromStock: "Alles liegt im Lager, und niemand anderes hat es.",
    otherInputs:
      "Der Plan ist älter als die letzten Änderungen an Aufträgen oder Werk; die Antwort rechnet schon mit dem jetzigen Stand.",
    unplannedOrders: (n) =>
      n === 1
        ? "1 Auftrag des Auftragsbuchs ist noch nicht geplant: Er braucht vielleicht dieselben Stunden."
        : `${n} Aufträge des Auftragsbuchs sind noch nicht geplant: Sie brauchen vielleicht dieselben Stunden.`,
    unplannedHolds: (orders) =>
      `Reserviert, aber ohne Platz im Plan: ${orders}. Mehr lässt sich erst reservieren, wenn die Planung neu gelaufen ist.`,
    never: "Ohne Plan lässt sich nichts zusagen",
    neverHint:
      "Eine Zusage sagt, wo ein Auftrag zwischen die geplanten passt. In der Planung das Auftragsbuch planen lassen, oder es auf der Tafel selbst tun.",
    toBoard: "Zur Tafel",
    how: "Wie es zustande kommt",
    steps: {
      stock: (pieces) => `${pieces} Stück kommen aus dem Lager.`,
      leastRun: (pieces) => `Gefertigt wird in Läufen von mindestens ${pieces} Stück.`,
      units: (units, unit, pieces) => `Gefertigt wird in ganzen Packungen: ${units} ${unit} zu ${pieces}.`,
      scrap: (share, pieces) => `Geformt werden im Ganzen ${pieces}: etwa ${share} sind Ausschuss.`,
      change: (line, minutes, team, start) =>
        team === null
          ? `${line} wird dafür umgerüstet, ${minutes}, ab ${start}.`
          : `${line} wird dafür von ${team} umgerüstet, ${minutes} Arbeit, ab ${start}.`,
      noChange: (line) => `${line} ist schon dafür gerüstet.`,
      run: ({ pieces, line, mould, start, end, shift }) =>
        shift === null
          ? `${line} fertigt ${pieces} Stück mit ${mould}, ${start} bis ${end}.`
          : `${line} fertigt ${pieces} Stück mit ${mould}, ${start} (Schicht „${shift}“) bis ${end}.`,
      rests: (time, until) => `Danach muss die Ware ${time} ruhen, bis ${until}.`,
      margin: (time) => `${time} bleiben in Reserve, weil die Geschwindigkeit nicht belegt ist.`,
      moved: (n) =>
        n === 1
          ? "1 anderer Lauf rückt dafür und ist weiter rechtzeitig."
          : `${n} andere Läufe rücken dafür; alle sind weiter rechtzeitig.`,
      movedOthers: (n) => (n === 1 ? "1 anderer Lauf rückt dafür." : `${n} andere Läufe rücken dafür.`),
    },
    units: {
      piece: "Stück",
      stack: "Stapel",
      carton: "Kartons",
      pallet: "Paletten",
    },
    rate: "Womit gerechnet wird",
    proven: (perHour, reports) =>
      reports === 1
        ? `${perHour}, auf dieser Linie durch 1 Meldung belegt.`
        : `${perHour}, auf dieser Linie durch ${reports} Meldungen belegt.`,
    computed: (perHour) => `${perHour}, berechnet, auf dieser Linie noch nicht belegt.`,
    marginPlant: (share, rates) =>
      `Dazu kommen ${share} der Laufzeit: Damit kommen nach ${rates} belegten Geschwindigkeiten dieses Werks 19 von 20 solchen Läufen aus.`,
    marginRule: (share) =>
      `Dazu kommen ${share} der Laufzeit, eine Faustregel: Zu wenige Geschwindigkeiten dieses Werks sind belegt.`,
    noMargin: (rates) =>
      `Nichts kommt dazu: Die ${rates} belegten Geschwindigkeiten dieses Werks sind nicht langsamer als die berechneten.`,
    picture: "Auf der Linie",
    pictureText: ({ line, start, end, before, after }) =>
      `${line} von ${start} bis ${end}: der Lauf zwischen seinen Nachbarn. Davor: ${before}; danach: ${after}.`,
    nothingBeside: "nichts",
    pictureHint:
      "Umrandet: dieser Lauf. Tore sind Umrüstungen mit ihren Minuten, Schraffur ist geschlossene Zeit.",
    sure: "Wie sicher es ist",
    sureWorking: "Wird an vielen Tagen mit Störungen durchgespielt…",
    sureFailed: "Wie sicher es ist, ließ sich nicht ausrechnen.",
    chance: (times, of) => `Etwa ${times} von ${of}`,
    chanceSure: "So gut wie sicher",
    chanceHardly: "Kaum",
    chanceFor: (by) => `fertig bis ${by}`,
    at80: (time) => `8 von 10 sind bis ${time} fertig.`,
    at95: (time) => `19 von 20 sind bis ${time} fertig.`,
    atNever: (share) => `Nicht einmal ${share} sind vor dem Ende des Plans fertig.`,
    sureOf: (runs) =>
      `Von ${runs} durchgespielten Verläufen des Plans, mit Störungen und Geschwindigkeiten, wie sie in diesem Werk schwanken.`,
    chartText: (parts) => `Zeiten auf einer Linie: ${parts}`,
    chart: { promised: "zugesagt", wanted: "gewünscht", at80: "8 von 10", at95: "19 von 20" },
    others: "Andere Wege",
    othersWorking: "Andere Wege werden gesucht…",
    noOthers: "Kein anderer Weg ist in irgendetwas besser.",
    kinds: {
      whole: "In einem Lauf",
      split: "Auf zwei Linien zugleich",
      "first part": "Ein erster Teil rechtzeitig, der Rest später",
      "extra shift": "Mit einer zusätzlichen Schicht",
      displacing: "Andere warten lassen",
    },
    earlier: (by) => `${by} früher`,
    later: (by) => `${by} später`,
    sameTime: "zur selben Zeit",
    part: (pieces, time, line) => `${pieces} Stück fertig ${time}, ${line}`,
    price: "Was es das Werk kostet",
    more: (money) => `${money} mehr`,
    less: (money) => `${money} gespart`,
    free: "nichts",
    changeMore: (time) => `${time} mehr Umrüsten`,
    changeLess: (time) => `${time} weniger Umrüsten`,
    overtime: (time) => `${time} Überstunden`,
    priceDetails: "Posten für Posten",
    delays: "Wer warten müsste",
    delay: (customer, order, by) => `${customer}, Auftrag ${order}: ${by} verspätet`,
    forecast: "eine Vorschau, noch nicht bestellt",
    shiftFirst: ({ day, start, end, lines }) =>
      `Die Planung muss die Schicht erst hinzufügen: ${day}, ${start} bis ${end}, ${lines}.`,
    plannerDecides: "Das entscheidet die Planung. Den Link dieser Anfrage schicken.",
    partsAlone: "Teile werden einzeln reserviert: für jeden Teil allein fragen.",
    choose: "Stattdessen anbieten",
    chosen: "Angeboten",
    backToFirst: "Zurück zur ersten Antwort",
    nowhere: "Wege, die nicht weiterführen",
    nowhereWhy: {
      "parts-not-allowed": "der Kunde nimmt keine Teile",
      "no-day-wanted": "es ist kein Tag gewünscht",
      "whole-in-time": "alles ist schon rechtzeitig",
      "no-run-to-shorten": "es gibt keinen Lauf, der sich vorziehen ließe",
      "no-closed-hours": "keine geschlossenen Stunden stehen im Weg",
      "no-gain": "es wäre nicht früher",
      "nobody-counts-less": "niemand im Weg zählt weniger",
      "no-place": "auch dann ist kein Platz",
      "one-line": "nur eine Linie kann ihn fertigen",
      "too-small": "zum Aufteilen ist es zu wenig",
      "no-room-for-the-rest": "der Rest findet keinen Platz",
      "nothing-by-then": "bis dahin kann nichts davon fertig sein",
    },
    impossible: "Das lässt sich nicht zusagen",
    impossibleUntil: (time) => `Bis zum Ende des Plans am ${time} ist kein Platz dafür. Warum:`,
    everyLine: "Auf jeder Linie",
    delaysAnother: (order, by) => `Auftrag ${order} wäre ${by} später als zugesagt.`,
    delaysForGood: (order) => `Auftrag ${order} verlöre seinen Platz.`,
    whatNow:
      "Weniger Stück oder einen anderen Tag anfragen, die anderen Wege ansehen, oder die Planung fragen.",
    words: "Was die Wörter heißen",
    glossary: [
      ["Linie", "eine Maschine, die die Ware aus Folie formt, stanzt und stapelt"],
      ["Werkzeug", "gibt der Ware ihre Form; oft gibt es nur eines"],
      ["Umrüsten", "Einrichter bauen ein Werkzeug aus und ein anderes ein; die Linie steht so lange"],
      [
        "Belegte Geschwindigkeit",
        "beim Lauf gemessen; eine berechnete ist es nicht, darum kommt etwas Zeit dazu",
      ],
      [
        "Reserviert",
        "Stunden und Bestand bleiben bis zur gewählten Zeit für den Kunden frei; danach dürfen andere sie haben",
      ],
    ],
  },
};
