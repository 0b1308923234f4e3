import type { OrderChange } from "@formweek/contracts";
import { following } from "../kernels/order-conflict.ts";
import { turnedRound } from "../kernels/order-terms.ts";

/** One step of a planner's work on the order book: what was changed at once. */
type BookStep = readonly OrderChange[];

export type AskedAs = "change" | "undo" | "redo";

export interface AskedStep {
  readonly as: AskedAs;
  /** The changes as they are sent. */
  readonly changes: BookStep;
}

/** A planner's work on the order book since the page was opened, newest step last. */
export interface BookEdits {
  readonly done: readonly BookStep[];
  readonly undone: readonly BookStep[];
  /** Sent and not answered yet. */
  readonly asked: AskedStep | null;
  /** Changes that were made meanwhile, to be sent in turn. */
  readonly waiting: readonly BookStep[];
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
  | { readonly kind: "accepted" }
  | { readonly kind: "refused" }
  /** An import made these changes. */
  | { readonly kind: "taken over"; readonly changes: BookStep }
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
      return edits.asked === null ? edits : accepted(edits, edits.asked);
    case "refused":
      return edits.asked === null ? edits : { ...edits, asked: null, refused: edits.asked };
    case "taken over":
      return accepted(edits, { as: "change", changes: intent.changes });
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
  return { as: wanted, changes: wanted === "undo" ? turnedRound(step) : step };
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
    : { ...edits, waiting, asked: { as: "change", changes } };
}

/** What was decided on a conflict may be less or other than the step was: what was sent counts. */
function accepted(edits: BookEdits, step: AskedStep): BookEdits {
  const { done, undone } = edits;
  const { changes } = step;
  const waiting = edits.waiting.map((waited) => following(waited, changes));
  const rest = { ...edits, asked: null, waiting, newest: step, settled: edits.settled + 1 };
  if (step.as === "undo")
    return sendNext({ ...rest, done: done.slice(0, -1), undone: [...undone, turnedRound(changes)] });
  const kept = step.as === "redo" ? undone.slice(0, -1) : [];
  return sendNext({ ...rest, done: [...done, changes].slice(-mostSteps), undone: kept });
}

function leftToOthers(edits: BookEdits, { as }: AskedStep): BookEdits {
  const { done, undone } = edits;
  return sendNext({
    ...edits,
    refused: null,
    settled: edits.settled + 1,
    done: as === "undo" ? done.slice(0, -1) : done,
    undone: as === "redo" ? undone.slice(0, -1) : undone,
  });
}
