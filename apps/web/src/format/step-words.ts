import type { HandEdit, LotName, WorkingPlanStep } from "@formweek/contracts";
import type { Format } from "./format.ts";
import type { BoardPlan } from "../kernels/board-plan.ts";
import type { Text } from "../text/text.ts";

interface Words {
  readonly text: Text;
  readonly format: Format;
}

/** A lot as a title; of an order in one lot the order alone. */
export function lotTitle(plan: BoardPlan, name: LotName, { text, format }: Words): string {
  return isOneOfSeveral(plan, name)
    ? text.edit.lot(name.orderId, format.count(name.lot + 1))
    : text.edit.order(name.orderId);
}

function isOneOfSeveral(plan: BoardPlan, { orderId, lot }: LotName): boolean {
  return lot > 0 || plan.document.lots.filter((each) => each.orderId === orderId).length > 1;
}

/** As `lotTitle`, within a sentence. */
function lotWords(plan: BoardPlan, name: LotName, { text, format }: Words): string {
  const { orderId, lot } = name;
  return isOneOfSeveral(plan, name)
    ? text.edit.lotOfOrder(orderId, format.count(lot + 1))
    : text.edit.wholeOrder(orderId);
}

/** An edit in words, as something done. */
export function editWords(plan: BoardPlan, edit: HandEdit, words: Words): string {
  const { steps } = words.text.edit;
  const hours = words.text.hours.steps;
  switch (edit.kind) {
    case "move":
      if (edit.mouldId !== undefined) return steps.mould(lotWords(plan, edit, words), edit.mouldId);
      return steps.move(lotWords(plan, edit, words), lineName(plan, edit.lineId));
    case "split":
      return steps.split(edit.orderId, words.format.count(edit.pieces), lineName(plan, edit.lineId));
    case "take out":
    case "put back":
    case "join":
      return steps[edit.kind](edit.orderId);
    case "close line":
      return hours["close line"](lineName(plan, edit.closure.lineId), edit.closure.reason);
    case "open line":
      return hours["open line"](lineName(plan, edit.closure.lineId));
    case "add shift":
    case "take shift back":
      return hours[edit.kind](edit.shift.name, edit.shift.date);
    case "choose":
      return edit.orderId === null ? steps.chosen : steps.chosenFor(edit.orderId);
    case "adopt":
      return steps.adopt(edit.name);
    case "hold":
      return steps.hold(edit.orderId, edit.customer);
    case "end holds":
      return steps["end holds"][edit.state](edit.orderIds.join(", "));
    case "order hold":
      return steps["order hold"](edit.orderId, edit.orderNumber);
  }
}

/** A step of the working plan in words. */
export function stepWords(plan: BoardPlan, step: WorkingPlanStep, words: Words): string {
  const { steps, earlierStep } = words.text.edit;
  const what = step.edit === null ? null : editWords(plan, step.edit, words);
  switch (step.kind) {
    case "edit":
    case "hold":
      return what ?? earlierStep;
    case "undo":
    case "redo":
      return steps[step.kind](what ?? earlierStep);
    case "run":
    case "restore":
    case "publish":
      return steps[step.kind];
  }
}

/** A line by its name; its id where the plan does not know it. */
function lineName(plan: BoardPlan, lineId: string): string {
  return plan.lines.find(({ id }) => id === lineId)?.name ?? lineId;
}
