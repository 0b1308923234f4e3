import type { EditRefusal, ProblemCode } from "@formweek/contracts";
import type { refusalsText as english } from "../en/refusals-text.ts";
import type { Naming } from "../naming.ts";
import { causesText } from "./causes-text.ts";
import { type ProblemWords, promiseProblems } from "./promise-problems.ts";
import { scenarioProblems } from "./scenario-problems.ts";
import { importFaults } from "./import-faults.ts";
import { causeOf, remedyOf, worded } from "./fault-sentences.ts";
import { fault } from "./fault-words.ts";
import { isPin } from "./pin-words.ts";

/** What the server refuses, worded from its code; the fields and rows concerned are named beside it. */
export const refusalsText: typeof english = {
  refusals: {
    problem: (said, naming) => {
      const words = problems[said.code as ProblemCode] as ProblemWords | undefined;
      const faults = said.faults.map((each) => worded(each, naming));
      if (words === undefined) return { ...said, faults };
      const [title, cause, remedy] = words;
      if (cause !== null) return { title, cause, remedy, faults };
      const known = faults.filter((_, place) => said.faults[place]?.cause !== undefined);
      if (known.length === 0) return { title, cause: said.cause, remedy, faults };
      const isHeld = said.faults.some((each) => each.cause !== undefined && isPin(each.cause));
      return {
        title: isHeld && said.code === "invalid-input" ? notHeldThere : title,
        cause: causeOf(known),
        remedy: remedyOf(known),
        faults,
      };
    },
    edit: (refusal, naming) => {
      const [cause, remedy] = edit(refusal, naming);
      const reasons = (refusal.reasons ?? []).map((reason) => causesText.causes.unplanned(reason, naming));
      return { cause: [cause, ...new Set(reasons)].join(" "), remedy };
    },
    importFault: ({ code, values, cause, problem, remedy }, naming) => {
      if (code === undefined) {
        if (cause === undefined) return { problem, remedy };
        const [found, advised] = fault(cause, naming);
        return { problem: found, remedy: advised };
      }
      const [said, advice] = importFaults[code](values ?? {});
      return { problem: said, remedy: advice };
    },
    editTitle: (order) => `Auftrag ${order} lässt sich so nicht ändern.`,
  },
};

const notHeldThere = "Der Auftrag lässt sich dort nicht festhalten.";

const lookAgain = "Den jetzigen Stand ansehen, dann die Änderung wiederholen.";

const problems: Readonly<Record<ProblemCode, ProblemWords>> = {
  "not-found": [
    "Das Gesuchte gibt es hier nicht.",
    "Es wurde inzwischen entfernt, oder seine Nummer ist falsch.",
    "Die Seite neu laden und erneut wählen.",
  ],
  forbidden: [
    "Die eigene Rolle erlaubt das nicht.",
    "Dafür ist in diesem Werk eine andere Rolle nötig.",
    "Die Werksverwaltung fragen oder jemanden mit dieser Rolle.",
  ],
  "unreadable-file": [
    "Die Datei ist nicht lesbar.",
    null,
    "Die Datei im Tabellenprogramm öffnen, neu speichern und noch einmal laden.",
  ],
  "invalid-input": ["Das geht so nicht.", null, "Die genannten Angaben berichtigen und erneut versuchen."],
  "import-not-acceptable": [
    "Es gibt nichts zu übernehmen.",
    "Keine Zeile der Datei war brauchbar.",
    "Die genannten Zeilen berichtigen und die Datei erneut prüfen.",
  ],
  "order-book-changed": [
    "Der Auftragsbestand hat sich inzwischen geändert.",
    "Jemand anderes hat nach der Prüfung Aufträge geändert.",
    "Die Datei erneut prüfen: Die neue Prüfung zeigt, was sie jetzt ändern würde.",
  ],
  "pins-changed": [
    "Die festgehaltenen Aufträge haben sich inzwischen geändert.",
    "Jemand anderes hat einen Auftrag festgehalten oder freigegeben.",
    "Den Auftrag erneut ansehen, dann die Änderung wiederholen.",
  ],
  "plant-changed": [
    "Die Daten des Werks haben sich inzwischen geändert.",
    "Jemand anderes hat dieses Werk gespeichert.",
    lookAgain,
  ],
  "solve-in-progress": [
    "Es wird schon ein Plan gerechnet.",
    "In einem Werk läuft immer nur eine Planung.",
    "Warten, bis sie fertig ist, oder sie anhalten: Der bisher beste Plan bleibt.",
  ],
  "nothing-to-plan": [
    "Es gibt nichts zu planen.",
    "Der Auftragsbestand dieses Werks ist leer.",
    "Zuerst Aufträge importieren.",
  ],
  "problem-faulty": [
    "Die Daten lassen keinen Plan zu.",
    null,
    "Die genannten Angaben berichtigen oder die Aufträge freigeben, dann neu planen.",
  ],
  "plan-rejected": [
    "Der Plan hat eine Regel verletzt und wurde verworfen.",
    "Das ist ein Fehler des Planers, nicht der Daten.",
    "Neu planen und den Fehler melden.",
  ],
  "solver-failed": [
    "Es kam kein Plan zustande.",
    "Die Suche ist an einem eigenen Fehler geendet; Einzelheiten stehen im Protokoll des Servers.",
    "Neu planen. Scheitert es wieder, mit den Daten des Werks melden.",
  ],
  "working-plan-changed": [
    "Der Arbeitsplan hat sich inzwischen geändert.",
    "Seit dem letzten Ansehen kam mindestens ein Schritt dazu; der Verlauf nennt ihn.",
    lookAgain,
  ],
  "edit-refused": [
    "Der Plan lässt sich so nicht ändern.",
    "Eine Regel des Plans steht dagegen.",
    "Einen anderen Platz wählen.",
  ],
  "hours-refused": [
    "Die Zeiten lassen sich so nicht ändern.",
    null,
    "Die genannten Angaben berichtigen und erneut versuchen.",
  ],
  "frozen-runs": [
    "Das verschöbe Läufe, die fest sind.",
    "Der zuletzt freigegebene Plan hält Läufe bis zu seinem festen Zeitpunkt am Platz.",
    "Sie am Platz lassen oder bestätigen, dass sie sich verschieben dürfen.",
  ],
  "nothing-to-undo": [
    "Es gibt nichts rückgängig zu machen.",
    "Der Arbeitsplan steht bei seinem ersten Schritt.",
    "Nichts zu tun; ein anderer Plan lässt sich aus der Liste der Pläne zurückholen.",
  ],
  "nothing-to-redo": [
    "Es gibt nichts zu wiederholen.",
    "Seit dem letzten neuen Schritt wurde keiner rückgängig gemacht.",
    "Nichts zu tun; ein anderer Plan lässt sich aus der Liste der Pläne zurückholen.",
  ],
  "already-working-plan": [
    "Dieser Plan ist schon der Arbeitsplan.",
    "Der gewünschte Plan steht bereits.",
    "Nichts zu tun, oder einen anderen Plan wählen.",
  ],
  "not-working-plan": [
    "Dieser Plan ist nicht der Arbeitsplan.",
    "Nur der Arbeitsplan wird freigegeben.",
    "Ihn zuerst zurückholen oder den Arbeitsplan freigeben.",
  ],
  "order-not-late": ["Dieser Auftrag ist nicht verspätet.", null, "Einen verspäteten Auftrag wählen."],
  "findings-outdated": [
    "Das wurde für andere Daten gefunden.",
    "Werk, Aufträge oder festgehaltene Aufträge haben sich seither geändert.",
    "Die Suche neu starten, dann wählen.",
  ],
  "plan-outrun": [
    "Der Lauf wurde nicht angehalten.",
    "Er hat inzwischen bessere Pläne gefunden, und der, der bleiben sollte, ist nicht mehr da.",
    "Den besten Plan, wie er jetzt ist, ansehen und dann anhalten.",
  ],
  ...promiseProblems,
  ...scenarioProblems,
  "conflicting-write": [
    "Jemand anderes hat im selben Augenblick geschrieben.",
    "Zwei Änderungen kamen gleichzeitig.",
    lookAgain,
  ],
  "invalid-request": [
    "Die Anfrage ist ungültig.",
    "Mindestens ein Wert fehlt, hat die falsche Art oder liegt außerhalb der Grenzen.",
    "Die genannten Werte berichtigen und erneut senden.",
  ],
  "malformed-body": [
    "Die Anfrage ist nicht lesbar.",
    "Ihr Inhalt hat nicht die angegebene Form, oder das Formular ist unvollständig.",
    "Die Seite neu laden und erneut versuchen.",
  ],
  "body-too-large": [
    "Die Anfrage ist zu groß.",
    "Eine Datei, die Zahl der Dateien oder der Inhalt liegt über der Grenze.",
    "Die Datei teilen oder nicht benötigte Blätter weglassen.",
  ],
  "unsupported-media-type": [
    "Diese Art von Inhalt wird hier nicht angenommen.",
    "Sie gehört nicht zu denen, die hier gelesen werden.",
    "Eine CSV- oder XLSX-Datei wählen.",
  ],
  "too-many-requests": [
    "Zu viele Anfragen.",
    "Von dieser Adresse kamen in einer Minute mehr, als der Server annimmt.",
    "Eine Minute warten und erneut versuchen.",
  ],
  "no-such-route": [
    "An dieser Adresse ist nichts.",
    "Der Server kennt sie nicht.",
    "Die Seite neu laden; hilft das nicht, haben Server und Seite verschiedene Versionen.",
  ],
  "foreign-origin": [
    "Die Anfrage kam von einer anderen Seite.",
    "Sie wurde unter einer fremden Adresse abgeschickt.",
    "Den Planer unter seiner eigenen Adresse öffnen und den Schritt dort wiederholen.",
  ],
  internal: [
    "Im Planer ist etwas schiefgegangen.",
    "Das ist ein Fehler des Planers, nicht der Daten; Einzelheiten stehen im Protokoll des Servers.",
    "Erneut versuchen. Geschieht es wieder, Zeit und Schritt melden.",
  ],
};

/** Why a change by hand cannot be, and what to do. */
function edit(refusal: EditRefusal, naming: Naming): readonly [cause: string, remedy: string] {
  const { orderId, otherOrderId } = refusal;
  const order = `Auftrag ${orderId}`;
  const other = `Auftrag ${otherOrderId ?? ""}`;
  const lot = refusal.lot === null || refusal.lot === 0 ? order : `${order} Los ${refusal.lot + 1}`;
  const line = refusal.lineId === null ? "" : naming.line(refusal.lineId);
  const here = refusal.lineId === null ? "im Plan" : `an diesem Platz auf ${line}`;
  switch (refusal.code) {
    case "order-unknown":
      return [
        `${order} ist nicht zu planen.`,
        "Einen Auftrag des Plans wählen oder ihn zuerst in den Auftragsbestand aufnehmen.",
      ];
    case "lot-unknown":
      return [`${lot} gibt es nicht.`, "Den Plan erneut ansehen und eines seiner Lose wählen."];
    case "line-unknown":
      return [`Die Linie ${line} gibt es in diesem Werk nicht.`, "Eine Linie des Werks wählen."];
    case "place-unknown":
      return [
        `${other}, vor dem er laufen sollte, läuft nicht auf ${line}.`,
        "Den Plan erneut ansehen und einen Platz auf der Linie wählen.",
      ];
    case "does-not-fit":
      return refusal.lineId === null
        ? [
            `Keine Linie kann ${order} fertigen.`,
            "Werkzeuge und Linien des Artikels ansehen, und was den Auftrag festhält.",
          ]
        : [`${order} kann nicht auf ${line} laufen.`, "Eine Linie wählen, auf die seine Werkzeuge passen."];
    case "mould-does-not-fit":
      return [`Dieses Werkzeug fertigt ${order} auf ${line} nicht.`, "Dort ein anderes Werkzeug wählen."];
    case "held-on-line":
      return [
        `${order} ist auf ${naming.line(refusal.heldLineId ?? "")} festgehalten.`,
        "Den Auftrag freigeben oder auf dieser Linie lassen.",
      ];
    case "held-at-start":
      return [
        `${lot} ist zu einem Beginn festgehalten, den er ${here} nicht einhalten kann.`,
        "Den Auftrag zuerst freigeben oder einen Platz wählen, an dem er den Beginn einhält.",
      ];
    case "held-in-sequence":
      return otherOrderId === null
        ? [
            `${lot} ist an seinem Platz in der Folge der Linie festgehalten.`,
            "Den Auftrag vor dem Verschieben freigeben.",
          ]
        : [
            `In der Folge festgehaltene Aufträge kommen auf der Linie zuerst, als letzter ${other}.`,
            `Einen Platz hinter ${other} wählen oder ihn freigeben.`,
          ];
    case "planned-already":
      return [`${order} steht schon im Plan.`, "Ihn dorthin verschieben, wo er laufen soll."];
    case "not-planned":
      return [`${order} steht nicht im Plan.`, "Den Auftrag zuerst wieder einplanen."];
    case "may-not-be-split":
      return [
        `${order} ist in einem Los zu fertigen.`,
        "Ihn als Ganzes verschieben oder für seinen Artikel das Teilen erlauben.",
      ];
    case "too-many-lots":
      return [
        `${order} hat schon so viele Lose, wie er haben darf.`,
        "Zuerst seine Lose zusammenlegen oder ihn verschieben, wie er ist.",
      ];
    case "too-few-pieces":
      return [
        `Ein Los von ${order} braucht mindestens ${naming.figure(refusal.leastPieces ?? 1)} Stück.`,
        "Eine ganze Stückzahl wählen, die beiden Losen so viel lässt.",
      ];
    case "breaks-packing":
      return [
        `Das bräche Packeinheiten von ${naming.figure(refusal.unitPieces ?? 1)} Stück in mehr als einem Los von ${order} an.`,
        `Ein Vielfaches von ${naming.figure(refusal.unitPieces ?? 1)} Stück wählen.`,
      ];
    case "not-split":
      return [`${order} wird in einem Los gefertigt.`, "Es gibt nichts zusammenzulegen."];
    case "no-room":
      return [
        `${lot} findet ${here} keinen Platz.`,
        "Einen anderen Platz oder eine andere Linie wählen oder erst einen anderen Auftrag aus dem Plan nehmen.",
      ];
    case "crowds-out":
      return [
        `${other} fände im Plan keinen Platz mehr.`,
        `Einen anderen Platz wählen oder zuerst ${other} freigeben oder aus dem Plan nehmen.`,
      ];
  }
}
