import type { EditRefusal } from "@formweek/scheduler";
import type { RecordKind } from "@formweek/capacity-model";
import type { FaultCause } from "./fault-cause.ts";

/** One bad field or row behind a refusal. `path` is a field path ("lines.0.name") or a place in a file; "" for the whole input. */
export interface FieldFault {
  readonly path: string;
  readonly problem: string;
  readonly remedy: string;
  /** The same apart from words; absent where only the words are known. */
  readonly cause?: FaultCause;
  /** The record of the path, where it leads to one. */
  readonly record?: { readonly kind: RecordKind; readonly name: string };
}

/** Stable codes of refusals; each is answered with one HTTP status by the API and one exit text by the command line. */
export type AppErrorCode =
  | "not-found"
  | "forbidden"
  | "unreadable-file"
  | "invalid-input"
  | "import-not-acceptable"
  | "order-book-changed"
  | "pins-changed"
  | "plant-changed"
  | "solve-in-progress"
  | "nothing-to-plan"
  | "problem-faulty"
  | "plan-rejected"
  | "solver-failed"
  | "working-plan-changed"
  | "edit-refused"
  | "hours-refused"
  | "frozen-runs"
  | "nothing-to-undo"
  | "nothing-to-redo"
  | "already-working-plan"
  | "not-working-plan"
  | "order-not-late"
  | "findings-outdated"
  | "plan-outrun"
  | "not-planned-yet"
  | "plan-over"
  | "plan-does-not-follow"
  | "promise-moved"
  | "offer-gone"
  | "holds-not-planned"
  | "hold-ended"
  | "hold-key-used"
  | "scenario-refused"
  | "scenario-changed"
  | "scenario-outdated"
  | "too-many-scenarios"
  | "conflicting-write";

/** A refusal: what happened, why, and what the person can do about it, with the fields or rows concerned. */
export interface AppError {
  readonly code: AppErrorCode;
  /** What happened, one sentence. */
  readonly title: string;
  /** Why. */
  readonly cause: string;
  /** What to do about it. */
  readonly remedy: string;
  readonly faults: readonly FieldFault[];
  /** The rule of the plan that stands against a change by hand, apart from words. */
  readonly edit?: EditRefusal;
  /** What can be promised now, where an offer has moved. Instants are ISO 8601 UTC. */
  readonly offer?: { readonly kind: string; readonly finish: string; readonly promised: string };
  /** Ids of products that look most like the one that is not known. */
  readonly nearest?: readonly string[];
}

/** Builds a refusal; without faults the list is empty. */
export function appError(
  code: AppErrorCode,
  text: { readonly title: string; readonly cause: string; readonly remedy: string },
  faults: readonly FieldFault[] = [],
): AppError {
  return { code, ...text, faults };
}
