import { type AppError, appError } from "../errors.ts";
import { isoInstant } from "../planning/iso-instant.ts";
import type { HandEdit } from "../planning/plan-edit.ts";
import type { ListedStep } from "../ports/step-repository.ts";

/** The working plan is not any more what the caller saw; `since` are the newest steps after that, newest first. */
export function workingPlanChanged(
  since: readonly ListedStep[],
  { expectedRevision, revision }: { readonly expectedRevision: number; readonly revision: number },
): AppError {
  const more = revision - expectedRevision - since.length;
  const unnamed = more > 0 ? ` ${more} ${more === 1 ? "step" : "steps"} before that.` : "";
  const cause =
    since.length > 0
      ? `${since.map(stepText).join(" ")}${unnamed}`
      : `The working plan is at revision ${revision}; you named ${expectedRevision}, which does not exist yet.`;
  return appError("working-plan-changed", {
    title: "The working plan changed in the meantime.",
    cause,
    remedy: "Look at the plan as it is now, then repeat your change.",
  });
}

function stepText({ kind, edit, by, at }: ListedStep): string {
  return `${by} ${doneText(kind, edit)} at ${isoInstant(at)}.`;
}

function doneText(kind: ListedStep["kind"], edit: HandEdit | null): string {
  const what = edit === null ? "" : ` (${editText(edit)})`;
  switch (kind) {
    case "run":
      return "had it planned anew";
    case "edit":
      return `changed it by hand${what}`;
    case "undo":
      return `took a step back${what}`;
    case "redo":
      return `did a step again${what}`;
    case "restore":
      return "fetched an earlier plan back";
    case "publish":
      return "gave it out to the plant";
    case "hold":
      return `changed what is held for customers${what}`;
  }
}

function editText(edit: HandEdit): string {
  switch (edit.kind) {
    case "move":
      return `order ${edit.orderId} to line ${edit.lineId}`;
    case "take out":
      return `order ${edit.orderId} taken out`;
    case "put back":
      return `order ${edit.orderId} put back`;
    case "split":
      return `${edit.pieces} pieces of order ${edit.orderId} to line ${edit.lineId}`;
    case "join":
      return `lots of order ${edit.orderId} joined`;
    case "close line":
      return `line ${edit.closure.lineId} closed from ${edit.closure.from} (${edit.closure.reason})`;
    case "open line":
      return `line ${edit.closure.lineId} opened again from ${edit.closure.from}`;
    case "add shift":
      return `shift ${edit.shift.name} of ${edit.shift.date} added`;
    case "take shift back":
      return `shift ${edit.shift.name} of ${edit.shift.date} taken back`;
    case "choose":
      return edit.orderId === null
        ? "a plan chosen among several"
        : `a plan chosen to help order ${edit.orderId}`;
    case "adopt":
      return `scenario "${edit.name}" adopted`;
    case "hold":
      return `${edit.orderId} held for ${edit.customer}`;
    case "end holds":
      return `${edit.orderIds.join(", ")} ${edit.state}`;
    case "order hold":
      return `${edit.orderId} became order ${edit.orderNumber}`;
  }
}

/** Nothing to take back. */
export const nothingToUndo = appError("nothing-to-undo", {
  title: "There is nothing to take back.",
  cause: "The working plan stands at its first step.",
  remedy: "Nothing to do; to work on another plan, fetch it back from the list of plans.",
});

/** The way back ends at a step that holds capacity for a customer, or gives it back. */
export const nothingToUndoPastHold = appError("nothing-to-undo", {
  title: "There is nothing to take back.",
  cause:
    "Capacity was held for a customer, given back or ordered last: what was done before that stays done.",
  remedy: "Change the plan by hand from here on; to give capacity back, release the hold itself.",
});

/** Nothing to do again. */
export const nothingToRedo = appError("nothing-to-redo", {
  title: "There is nothing to do again.",
  cause: "No step was taken back since the last new one.",
  remedy: "Nothing to do; to work on another plan, fetch it back from the list of plans.",
});

/** The plan asked for is worked on already. */
export const alreadyWorkedOn = appError("already-working-plan", {
  title: "This plan is worked on already.",
  cause: "The plan that you want back is the working plan as it stands.",
  remedy: "Nothing to do; or choose another plan from the list of plans.",
});

/** Only the working plan can be given out. */
export const notWorkedOn = appError("not-working-plan", {
  title: "This plan is not the one that is worked on.",
  cause: "Only the working plan is given out; the plan that you named is another one.",
  remedy: "Fetch it back from the list of plans first, or give out the working plan.",
});

/** An earlier plan does not know capacity that is held by now: it would be sold twice. */
export const planBeforeHolds = (orderIds: readonly string[]): AppError =>
  appError("holds-not-planned", {
    title: "This plan is from before capacity was held.",
    cause: `It has no place for what is held for customers: ${orderIds.join(", ")}.`,
    remedy: "Change the plan by hand from where it stands, or release these holds first.",
  });
