import type { OrderChange } from "../commands/order-changes.ts";

/** A change of the order book by hand or by an import, one that takes an earlier step back, or one that does it again. */
export type BookStepKind = "change" | "undo" | "redo";

/** What a planner did to the order book at once. Steps are only ever added; undo and redo name the step that they turn. */
export interface BookStep {
  readonly kind: BookStepKind;
  /** Number of the step that is taken back or done again; null for a change. */
  readonly of: number | null;
  /** As they were made: less than was asked for where others' versions were left; empty where all were. */
  readonly changes: readonly OrderChange[];
  /** Where it was done: a desk takes back its own steps, never another's. */
  readonly desk: string;
  /** Id of the actor. */
  readonly by: string;
  /** Instant, seconds. */
  readonly at: number;
}

export interface NumberedBookStep extends BookStep {
  /** Greater than that of every earlier step. */
  readonly number: number;
}

/** Whose steps. */
export interface DeskOfPlant {
  readonly plantId: string;
  readonly desk: string;
  readonly by: string;
}

export interface BookStepRepository {
  /** Adds a step and gives its number. Of a desk's steps the newest hundred are kept. */
  readonly append: (plantId: string, step: BookStep) => Promise<number>;
  /** Steps of a desk, oldest first: the newest ones that hold at most so many changes together, but always the newest. */
  readonly newest: (of: DeskOfPlant, mostChanges: number) => Promise<readonly NumberedBookStep[]>;
  /** Forgets steps older than `at`; returns how many. */
  readonly forgetBefore: (at: number) => Promise<number>;
}
