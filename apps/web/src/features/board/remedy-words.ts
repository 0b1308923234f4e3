import type { HoursEdit, RemedyAction, RemedyChange } from "@formweek/contracts";
import type { Format } from "../../format/format.ts";
import type { PlanNames } from "../../format/plan-names.ts";
import { secondsOf, type BoardPlan } from "../../kernels/board-plan.ts";
import type { Text } from "../../text/text.ts";

interface Words {
  readonly plan: BoardPlan;
  readonly names: PlanNames;
  readonly text: Text;
  readonly format: Format;
}

/** A remedy as a planner would say it. */
export function remedyWords(action: RemedyAction, words: Words): string {
  const { actions } = words.text.remedies;
  switch (action.kind) {
    case "plan on":
      return actions["plan on"];
    case "hours":
      return hoursWords(action.edit, words);
    case "change":
      return changeWords(action.change, words);
    case "edit": {
      const { edit } = action;
      if (edit.kind !== "move") return actions.edit;
      const line = lineName(edit.lineId, words);
      return edit.before === null ? actions.moveLast(line) : actions.move(line, edit.before.orderId);
    }
  }
}

function hoursWords(edit: HoursEdit, words: Words): string {
  const { actions } = words.text.remedies;
  if (!("shift" in edit)) return actions.edit;
  const { start, end, lineIds, teamIds } = edit.shift;
  // noon: the day is its own in every zone that plants lie in
  const date = words.format.day(secondsOf(`${edit.shift.date}T12:00:00Z`));
  const who = [
    ...lineIds.map((id) => lineName(id, words)),
    ...teamIds.map((id) => words.names.team(id)),
  ].join(", ");
  return who === "" ? actions.operatorShift(date, start, end) : actions.shift(who, date, start, end);
}

function changeWords(change: RemedyChange, words: Words): string {
  const { names, format } = words;
  const { actions } = words.text.remedies;
  const instant = (text: string): string => format.instant(secondsOf(text));
  switch (change.kind) {
    case "extra shift":
      return actions["extra shift"](lineName(change.lineId, words), instant(change.from), instant(change.to));
    case "extra team":
      return actions["extra team"](instant(change.from), instant(change.to));
    case "extra operators": {
      const heads = format.decimal(change.heads, change.heads % 1 === 0 ? 0 : 1);
      return actions["extra operators"](heads, instant(change.from), instant(change.to));
    }
    case "mould copy":
      return actions["mould copy"](names.mouldAlone(change.mouldId));
    case "another line":
      return actions["another line"](lineName(change.lineId, words));
    case "lots":
      return actions.lots(change.most);
    case "earlier start":
      return actions["earlier start"](instant(change.at));
    case "later due":
      return actions["later due"](instant(change.at));
    case "earlier sheet":
      return actions["earlier sheet"](names.sheet(change.sheetId), format.hours(change.seconds));
  }
}

function lineName(lineId: string, { plan }: Words): string {
  return plan.lines.find(({ id }) => id === lineId)?.name ?? lineId;
}
