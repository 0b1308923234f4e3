import { type EditRefusal, openEdits } from "@formweek/scheduler";
import { problemFaulty } from "../jobs/solve-refusals.ts";
import { type AppError, appError } from "../errors.ts";
import { type Result, ok, refused } from "../result.ts";
import type { Assembled } from "./assembled.ts";
import type { PlanDocument } from "./plan-document.ts";
import type { PlanEdit } from "./plan-edit.ts";
import { planOfDocument } from "./plan-of-document.ts";
import { auditedDocument } from "./retime-document.ts";

/**
 * The document after a change by hand under the inputs as they are now, audited and described as a planning run's; null
 * when the change leaves everything where it is. Pure.
 */
export function editDocument(
  assembled: Assembled,
  document: PlanDocument,
  edit: PlanEdit,
): Result<PlanDocument | null> {
  const { problem, inputHash } = assembled;
  const opened = openEdits(problem, planOfDocument(document, problem));
  if (!opened.ok) return refused(problemFaulty(opened.error));
  const edited = opened.value.apply(edit);
  if (!edited.ok) return refused(editRefused(edited.error));
  if (edited.value === opened.value.plan && document.inputHash === inputHash) return ok(null);
  return auditedDocument(assembled, edited.value, document);
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
