import type { PlanFigures } from "../planning/plan-figures.ts";
import type { FoundFor, PlanSketch } from "../planning/run-findings.ts";
import type { ScenarioChange } from "../scenarios/scenario-change.ts";
import type { TurnedOrder } from "../scenarios/turned-orders.ts";

/** What the plan with the changes of a scenario came to. It was found for the inputs without the changes. */
export interface StoredOutcome extends FoundFor {
  readonly runId: string;
  /** Instant, seconds. */
  readonly endedAt: number;
  /** Revision of the scenario that was worked out. */
  readonly scenarioRevision: number;
  /** Revision of the working plan then; 0: there was none. */
  readonly stepRevision: number;
  /** The working plan as it stood; null: there was none. */
  readonly standing: PlanFigures | null;
  /** Planned on for as long without the changes. */
  readonly without: PlanFigures;
  readonly with: PlanFigures;
  readonly turned: readonly TurnedOrder[];
}

/** Who made the changes of a scenario in earnest, and when (instant, seconds). */
export interface Adopted {
  readonly by: string;
  readonly at: number;
}

/** A small, named list of changes to plant or orders. */
export interface StoredScenario {
  /** Sorts by when it was first written. */
  readonly id: string;
  /** Counts up by one with each rewriting, from 1; an outcome or an adoption does not count. */
  readonly revision: number;
  readonly name: string;
  readonly changes: readonly ScenarioChange[];
  /** Id of who wrote it last. */
  readonly by: string;
  /** Instant, seconds. */
  readonly at: number;
  readonly adopted: Adopted | null;
  readonly outcome: StoredOutcome | null;
}

/** An outcome with the plan behind it, so that adopting the scenario does not plan again. */
export interface FoundOutcome {
  readonly outcome: StoredOutcome;
  readonly sketch: PlanSketch;
}

export interface ScenarioRepository {
  /** The oldest first. */
  readonly list: (plantId: string) => Promise<readonly StoredScenario[]>;
  readonly get: (plantId: string, id: string) => Promise<StoredScenario | null>;
  /** The plan behind its outcome; null where it has none. */
  readonly sketch: (plantId: string, id: string) => Promise<PlanSketch | null>;
  readonly insert: (plantId: string, scenario: StoredScenario) => Promise<void>;
  /** Writes name and changes over `scenario.revision` and forgets an adoption; false, and nothing written, where it has another by now. */
  readonly rewrite: (plantId: string, scenario: StoredScenario) => Promise<boolean>;
  /** False, and nothing removed, where it has another revision by now. */
  readonly remove: (plantId: string, id: string, revision: number) => Promise<boolean>;
  /** In the place of an earlier outcome; false where the scenario is gone. */
  readonly putOutcome: (plantId: string, id: string, found: FoundOutcome) => Promise<boolean>;
  /** Null: its changes were taken back. Nothing happens where it has another revision by now. */
  readonly markAdopted: (
    plantId: string,
    scenario: Pick<StoredScenario, "id" | "revision">,
    adopted: Adopted | null,
  ) => Promise<void>;
}
