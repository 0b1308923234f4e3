import type { Format } from "./format.ts";
import { namingFor, type PlanNames } from "./plan-names.ts";
import type { BoardPlan } from "../kernels/board-plan.ts";
import type { HeldOrders, PromisedOrders } from "../kernels/held-order.ts";
import { isoWeek } from "../kernels/time-marks.ts";
import type { BoardWords } from "../render/frame.ts";
import type { Text } from "../text/text.ts";
import { pieceWords } from "./piece-words.ts";
import { rowLabel, rowUse } from "./row-words.ts";

const fullDayFromPx = 92;
const weekdayFromPx = 58;

/** Words of the drawing in the reader's language and the plant's zone. */
export function boardWords(
  plan: BoardPlan,
  {
    names,
    held,
    promised,
    text,
    format,
  }: {
    readonly names: PlanNames;
    readonly held: HeldOrders;
    readonly promised: PromisedOrders;
    readonly text: Text;
    readonly format: Format;
  },
): BoardWords {
  // Noon: the date of a day whose first hour a clock change skips is still its own.
  const noon = (at: number): number => at + 43_200;
  const weekdays = new Map<number, string>();
  return {
    day: (mark, widthPx) => {
      if (widthPx >= fullDayFromPx) return format.day(noon(mark.at));
      if (widthPx < weekdayFromPx) return `${mark.day}`;
      const known = weekdays.get(mark.weekday) ?? format.day(noon(mark.at)).split(" ")[0] ?? "";
      weekdays.set(mark.weekday, known);
      return `${known} ${mark.day}`;
    },
    week: (mark) =>
      `${text.board.week(isoWeek(mark.year, mark.month, mark.day))} · ${format.shortDay(noon(mark.at))}`,
    pieces: (count) => format.count(count),
    rowLabel: (row) => rowLabel(row, names),
    rowUse: (row) => rowUse(row, { names, text, format }),
    line: ({ lineIndex }) => plan.lines[lineIndex]?.name ?? "",
    piece: (segment) =>
      pieceWords(segment, {
        place: plan.lines[segment.lineIndex]?.name ?? "",
        ...{ held, promised, text, format },
      }),
    hours: (seconds) => format.gate(seconds),
    late: (seconds) => text.board.late(format.span(seconds)),
    extraShift: (name) => text.hours.extraShift(name),
    stop: (reason) => text.board.stop[reason],
    refused: (reason) => text.edit.doesNotFit(text.causes.misfit(reason, namingFor(names, format))),
    now: text.board.now,
    frozen: (until) => text.board.frozen(format.instant(until)),
  };
}
