import type { EditRefusal } from "@formweek/scheduler";
import { problemFaulty } from "../jobs/solve-refusals.ts";
import { type AppError, appError } from "../errors.ts";
import { type Result, ok, refused } from "../result.ts";
import type { Assembled } from "./assembled.ts";
import { editOverFrozen } from "./edit-over-frozen.ts";
import { frozenPinsIn } from "./frozen-pins.ts";
import type { FrozenPlan } from "./frozen-plan.ts";
import { frozenRefusal } from "./frozen-refusal.ts";
import type { PlanDocument } from "./plan-document.ts";
import type { PlanEdit } from "./plan-edit.ts";
import { planOfDocument } from "./plan-of-document.ts";
import { auditedDocument } from "./retime-document.ts";

/** A change by hand, and what was given out and stands against it. */
export interface AskedEdit {
  readonly edit: PlanEdit;
  /** Null: nothing is frozen. */
  readonly frozen: FrozenPlan | null;
  /** It is said that frozen runs may move. */
  readonly overFrozen: boolean;
}

/**
 * The document after a change by hand under the inputs as they are now, audited and described as a planning run's; null
 * when the change leaves everything where it is. Pure.
 */
export function editDocument(
  assembled: Assembled,
  document: PlanDocument,
  { edit, frozen, overFrozen }: AskedEdit,
): Result<PlanDocument | null> {
  const { inputHash } = assembled;
  const plan = planOfDocument(document, assembled.problem);
  const pins = frozen === null ? [] : frozenPinsIn(assembled.problem, frozen, document);
  const tried = editOverFrozen(assembled.problem, plan, { edit, frozen: pins });
  if (tried.kind === "faulty") return refused(problemFaulty(tried.faults));
  if (tried.kind === "refused") return refused(editRefused(tried.refusal));
  const { problem, plan: edited, isIdle, moved } = tried.outcome;
  if (frozen !== null && moved.length > 0 && !overFrozen) return refused(frozenRefusal(frozen, moved));
  if (isIdle && moved.length === 0 && document.inputHash === inputHash) return ok(null);
  return auditedDocument({ ...assembled, problem }, edited, document);
}

/** Which rule stands against a change by hand, at the field of the change that it is about. */
function editRefused(edit: EditRefusal): AppError {
  const { code, orderId, text, remedy } = edit;
  const title = `Order ${orderId} cannot be changed so.`;
  const faults = [{ path: `edit.${fieldOf(code)}`, problem: text, remedy }];
  return { ...appError("edit-refused", { title, cause: text, remedy }, faults), edit };
}

function fieldOf(code: EditRefusal["code"]): string {
  switch (code) {
    case "lot-unknown":
      return "lot";
    case "line-unknown":
    case "does-not-fit":
    case "held-on-line":
      return "lineId";
    case "mould-does-not-fit":
      return "mouldId";
    case "place-unknown":
    case "held-at-start":
    case "held-in-sequence":
    case "no-room":
    case "crowds-out":
      return "before";
    case "too-few-pieces":
    case "breaks-packing":
      return "pieces";
    case "order-unknown":
    case "planned-already":
    case "not-planned":
    case "may-not-be-split":
    case "too-many-lots":
    case "not-split":
      return "orderId";
  }
}
