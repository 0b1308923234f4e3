import type { ProblemCode } from "@formweek/contracts";
import type { ProblemWords } from "./promise-problems.ts";

/** What stands against scenarios. */
export const scenarioProblems = {
  "scenario-refused": [
    "Diese Änderungen lassen sich so nicht durchdenken.",
    null,
    "Die genannten Angaben berichtigen und erneut versuchen.",
  ],
  "scenario-changed": [
    "Das Szenario hat sich inzwischen geändert.",
    "Jemand anderes hat es nach dem Ansehen geschrieben.",
    "Den jetzigen Stand ansehen, dann die Änderung wiederholen.",
  ],
  "scenario-outdated": [
    "Das Szenario lässt sich so nicht übernehmen.",
    "Es ist noch nicht durchgerechnet, oder Werk, Aufträge, Arbeitsplan oder das Szenario selbst haben sich seitdem geändert.",
    "Es erneut durchrechnen, dann übernehmen.",
  ],
  "too-many-scenarios": [
    "Es gibt schon zu viele Szenarien.",
    "Mehr hält der Planer für ein Werk nicht fest.",
    "Szenarien löschen, die nicht mehr gebraucht werden.",
  ],
} satisfies Partial<Readonly<Record<ProblemCode, ProblemWords>>>;
