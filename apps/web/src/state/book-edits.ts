import type { BookStep as KeptStep, OrderChange } from "@formweek/contracts";
import { following } from "../kernels/order-conflict.ts";
import { turnedRound } from "../kernels/order-terms.ts";

/** One step of a planner's work on the order book: what was changed at once. */
interface BookStep {
  readonly changes: readonly OrderChange[];
  /** By which the server knows the step. */
  readonly number: number;
}

export type AskedAs = "change" | "undo" | "redo";

export interface AskedStep {
  readonly as: AskedAs;
  /** The changes as they are sent. */
  readonly changes: readonly OrderChange[];
  /** Step that is taken back or done again; null for a change. */
  readonly of: number | null;
}

/** A planner's work on the order book at this desk, newest step last. */
export interface BookEdits {
  readonly done: readonly BookStep[];
  readonly undone: readonly BookStep[];
  /** Sent and not answered yet. */
  readonly asked: AskedStep | null;
  /** Changes that were made meanwhile, to be sent in turn. */
  readonly waiting: readonly (readonly OrderChange[])[];
  /** Refused, until the planner has decided what to do about it. */
  readonly refused: AskedStep | null;
  /** Accepted last. */
  readonly newest: AskedStep | null;
  /** Counts the steps that came to an end, by the server's yes or by leaving the book as others made it. */
  readonly settled: number;
}

export const noEdits: BookEdits = {
  done: [],
  undone: [],
  asked: null,
  waiting: [],
  refused: null,
  newest: null,
  settled: 0,
};

export type BookIntent =
  | { readonly kind: "asked"; readonly step: AskedStep }
  | { readonly kind: "accepted"; readonly number: number }
  | { readonly kind: "refused" }
  /** An import made these changes. */
  | { readonly kind: "taken over"; readonly changes: readonly OrderChange[]; readonly number: number }
  /** The server told what was done at this desk, oldest first. */
  | { readonly kind: "opened"; readonly steps: readonly KeptStep[] }
  /** The refusal is put away; the step can be tried again. */
  | { readonly kind: "put away" }
  /** What others made stands: the refused step is over. */
  | { readonly kind: "left to others" };

const mostSteps = 100;

/** The work on the book after an intent. Total: every intent has an answer in every state. */
export function reduceBook(edits: BookEdits, intent: BookIntent): BookEdits {
  switch (intent.kind) {
    case "asked":
      return asked(edits, intent.step);
    case "accepted":
      return edits.asked === null ? edits : accepted(edits, edits.asked, intent.number);
    case "refused":
      return edits.asked === null ? edits : { ...edits, asked: null, refused: edits.asked };
    case "taken over":
      return accepted(edits, { as: "change", changes: intent.changes, of: null }, intent.number);
    case "opened":
      return { ...edits, ...intent.steps.reduce<Stacks>(stacked, noEdits) };
    case "put away":
      return sendNext({ ...edits, refused: null });
    case "left to others":
      return edits.refused === null ? edits : leftToOthers(edits, edits.refused);
  }
}

/** The step that undo or redo would send; null when there is none. */
export function nextStep({ done, undone }: BookEdits, wanted: "undo" | "redo"): AskedStep | null {
  const step = (wanted === "undo" ? done : undone).at(-1);
  if (step === undefined) return null;
  const { changes, number } = step;
  return { as: wanted, changes: wanted === "undo" ? turnedRound(changes) : changes, of: number };
}

/** A change waits for its turn; a step back or forth is of what was seen, and lapses while something is under way. */
function asked(edits: BookEdits, step: AskedStep): BookEdits {
  if (edits.asked === null) return { ...edits, asked: step, refused: null };
  return step.as === "change" ? { ...edits, waiting: [...edits.waiting, step.changes] } : edits;
}

/** What waits is sent as soon as nothing is under way or to be decided. */
function sendNext(edits: BookEdits): BookEdits {
  const [changes, ...waiting] = edits.waiting;
  if (changes === undefined || edits.asked !== null || edits.refused !== null) return edits;
  return changes.length === 0
    ? sendNext({ ...edits, waiting })
    : { ...edits, waiting, asked: { as: "change", changes, of: null } };
}

/** What was decided on a conflict may be less or other than the step was: what was sent counts. */
function accepted(edits: BookEdits, step: AskedStep, number: number): BookEdits {
  const { as: kind, changes, of } = step;
  return sendNext({
    ...edits,
    ...stacked(edits, { kind, changes, of, number }),
    asked: null,
    waiting: edits.waiting.map((waited) => following(waited, changes)),
    newest: changes.length === 0 ? edits.newest : step,
    settled: edits.settled + 1,
  });
}

type Stacks = Pick<BookEdits, "done" | "undone">;
type ToldStep = Pick<KeptStep, "kind" | "of" | "number"> & BookStep;

/**
 * What can be taken back and done again after one more step, which is told twice at times: by the answer to it, and with
 * all steps of the desk. A step of which nothing came, since others' versions were left, is over.
 */
function stacked({ done, undone }: Stacks, { kind, of, changes, number }: ToldStep): Stacks {
  const without = (steps: readonly BookStep[]): readonly BookStep[] =>
    steps.filter((step) => step.number !== of && step.number !== number);
  const joined = (steps: readonly BookStep[], made: BookStep["changes"]): readonly BookStep[] =>
    changes.length === 0 ? without(steps) : [...without(steps), { changes: made, number }].slice(-mostSteps);
  if (kind === "undo") return { done: without(done), undone: joined(undone, turnedRound(changes)) };
  return { done: joined(done, changes), undone: kind === "redo" ? without(undone) : [] };
}

/** A step back or forth is told the server even so: after a reload it must not come up again. */
function leftToOthers(edits: BookEdits, { as, of }: AskedStep): BookEdits {
  if (as !== "change") return asked({ ...edits, refused: null }, { as, of, changes: [] });
  return sendNext({ ...edits, refused: null, settled: edits.settled + 1 });
}
