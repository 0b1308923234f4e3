import type { pictureText as english } from "../en/picture-text.ts";

/** Words of the board as a picture to take away. */
export const pictureText: typeof english = {
  picture: {
    open: "Tafel als Bild…",
    title: "Die Tafel als Bild",
    hint: "Mit Werk, Plan, gezeigter Zeit und der Bedeutung der Zeichen. SVG bleibt in jeder Größe scharf, und seine Wörter lassen sich suchen; PNG passt in jedes Dokument.",
    extent: "Was es zeigt",
    extents: {
      "in sight": "Zeilen und Zeit im Bild, mit dem gesetzten Filter",
      "whole plan": "Alle Zeilen des ganzen Plans",
    },
    colours: "Farben",
    colourChoices: { light: "Hell, für Papier", screen: "Wie auf dem Bildschirm" },
    saveSvg: "Als SVG speichern",
    savePng: "Als PNG speichern",
    close: "Schließen",
    tooLarge:
      "Ein so großes Bild aus Punkten kann der Browser nicht zeichnen. Weniger Zeilen oder weniger Zeit zeigen, oder als SVG speichern.",
    heading: (plant) => `${plant}: Linientafel`,
    plan: (made) => `Plan von ${made}`,
    span: (from, to, zone) => `${from} bis ${to}, Zeiten von ${zone}`,
    orders: (late, all) => `${late} von ${all} Aufträgen verspätet`,
    onlyLate: "Verspätete Aufträge sind hervorgehoben, andere blass.",
    found: (sought) => `Aufträge mit „${sought}“ sind hervorgehoben, andere blass.`,
    legend: {
      run: "Lauf, in der Farbe seiner Folie",
      clear: "klare Folie",
      late: "verspätet, Schweif ab dem Termin",
      change: "Rüsten, mit seinen Minuten",
      pause: "Lauf ruht",
      closed: "geschlossene Zeit",
      due: "Termin",
      held: "fest",
      frozen: "bis hier bleiben freigegebene Läufe",
      promised: "für einen Kunden reserviert",
      now: "jetzt",
    },
  },
};
