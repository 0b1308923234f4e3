import type { ProblemCode } from "@formweek/contracts";

/** What happened, why (null: what the server says stands, since it names the very entries), and what to do. */
export type ProblemWords = readonly [title: string, cause: string | null, remedy: string];

/** What stands against promises and holds. */
export const promiseProblems = {
  "not-planned-yet": [
    "Noch lässt sich nichts zusagen.",
    "Dieses Werk wurde noch nie geplant: Zusagen stehen auf dem Arbeitsplan.",
    "In der Planung einen Lauf starten lassen, dann erneut fragen.",
  ],
  "plan-over": [
    "Der Arbeitsplan ist zu Ende.",
    "Was nach seinem Ende kommt, ist nicht geplant.",
    "In der Planung einen Lauf starten lassen, dann erneut fragen.",
  ],
  "plan-does-not-follow": [
    "Der Arbeitsplan gilt nicht mehr.",
    "Werk oder Aufträge haben sich so geändert, dass ein Auftrag nicht mehr wie geplant laufen kann.",
    "In der Planung einen Lauf starten lassen, dann erneut fragen.",
  ],
  "promise-moved": [
    "Dieser Termin lässt sich nicht mehr zusagen.",
    "Stunden sind inzwischen vergeben, oder es ist Zeit vergangen.",
    "Den neuen Termin mitteilen und diesen reservieren, oder die anderen Wege ansehen. Reserviert wurde nichts.",
  ],
  "offer-gone": [
    "Dieses Angebot gibt es nicht mehr.",
    null,
    "Erneut fragen und unter den jetzigen Angeboten wählen. Reserviert wurde nichts.",
  ],
  "holds-not-planned": [
    "Für Reserviertes fehlt der Platz im Plan.",
    null,
    "In der Planung einen Lauf starten lassen, oder diese Reservierungen freigeben.",
  ],
  "hold-ended": [
    "Diese Reservierung ist beendet.",
    "Ihre Stunden werden nicht mehr freigehalten.",
    "Erneut fragen und das jetzige Angebot reservieren.",
  ],
  "hold-key-used": [
    "Dieser Schlüssel gehört zu einer anderen Reservierung.",
    "Mit demselben Schlüssel wurde schon etwas anderes reserviert.",
    "Für jede Reservierung einen neuen Schlüssel wählen.",
  ],
} satisfies Partial<Readonly<Record<ProblemCode, ProblemWords>>>;
