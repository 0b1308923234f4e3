import type { Text } from "../en/en.ts";

/** Words of a run's best plan so far, which can be looked at while the run goes on. */
export const lookText: Pick<Text, "look"> = {
  look: {
    open: "Ansehen",
    openHint: "Den bisher besten Plan des Laufs auf der Tafel zeigen (B)",
    back: "Zurück zu meinem Plan",
    backHint: "Wieder den Arbeitsplan zeigen (B)",
    keep: "Anhalten und diesen Plan behalten",
    keepHint: "Den Lauf anhalten; der Plan auf der Tafel, und kein anderer, wird der Arbeitsplan",
    title: "Der bisher beste Plan des Laufs",
    notYours: "Das ist der bisher beste Plan des Laufs, noch nicht Ihrer.",
    age: (seconds) => (seconds === 0 ? "Eben gefunden." : `${seconds} s alt.`),
    noEdits: "Er wird nicht von Hand geändert: erst behalten, oder zurück zu Ihrem Plan.",
    noEditsHere:
      "Das ist der bisher beste Plan des Laufs. Änderungen von Hand, das Festhalten von Aufträgen und warum Aufträge verspätet sind, gibt es, sobald er behalten ist.",
    notTaken:
      "Nichts wurde geändert. Dieser Plan ist noch nicht Ihrer: erst behalten, oder zurück zu Ihrem Plan (B).",
    loading: "Der bisher beste Plan des Laufs wird geholt …",
  },
};
