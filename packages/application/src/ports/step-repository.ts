import type { HandEdit } from "../planning/plan-edit.ts";
import type { StepRecords } from "../scenarios/record-changes.ts";

/** How a plan came to be the one that is worked on, or was given out. */
export type StepKind = "run" | "edit" | "undo" | "redo" | "restore" | "publish" | "hold";

/**
 * One step of a plant's working plan. Steps are only ever added, and each says by itself where the working plan stands
 * after it: on `planId`, with the step to go back to and the step to go forward to. Undo and redo are steps like others.
 */
export interface PlanStep {
  /** Revision of the working plan after the step: 1, 2, 3 … in each plant. */
  readonly revision: number;
  readonly kind: StepKind;
  /** Plan before the step; null at the first. */
  readonly fromPlanId: string | null;
  /** Plan after the step. */
  readonly planId: string;
  /** Revision of the step whose plan an undo brings back; null: nothing to take back. */
  readonly undoTo: number | null;
  /** Revision of the step whose plan a redo brings back; null: nothing to do again. */
  readonly redoTo: number | null;
  /** What was changed in plant and orders between the standing that an undo brings back and this one; null: nothing was. */
  readonly records: StepRecords | null;
  /** What was said to a plan that was given out; null for other kinds. */
  readonly note: string | null;
  /** Instant, seconds: runs of a plan that was given out keep their place if they start before it. Null: none does, or another kind of step. */
  readonly frozenUntil: number | null;
  /** Id of the actor. */
  readonly by: string;
  /** Instant, seconds. */
  readonly at: number;
}

/** A step with the change by hand between its two plans, whichever way it was gone; null where there is none. */
export interface ListedStep extends PlanStep {
  readonly edit: HandEdit | null;
}

export interface StepRepository {
  /** The step where the working plan stands; null for a plant that was never planned. */
  readonly newest: (plantId: string) => Promise<PlanStep | null>;
  /** The newest step of a kind; null: there is none. */
  readonly newestOf: (plantId: string, kind: StepKind) => Promise<PlanStep | null>;
  readonly get: (plantId: string, revision: number) => Promise<PlanStep | null>;
  /** Steps above a revision, newest first, at most `limit`. */
  readonly after: (plantId: string, revision: number, limit: number) => Promise<readonly ListedStep[]>;
  /** Steps below a revision, newest first, at most `limit`. */
  readonly before: (plantId: string, revision: number, limit: number) => Promise<readonly ListedStep[]>;
  /** Steps that gave a plan out, newest first, at most `limit`. */
  readonly published: (plantId: string, limit: number) => Promise<readonly PlanStep[]>;
  /** Adds the step if the newest is the one before it; true if written. */
  readonly append: (plantId: string, step: PlanStep) => Promise<boolean>;
}
