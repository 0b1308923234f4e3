import { instantOfLocalText, type Plant, type TimeWindow } from "@formweek/capacity-model";
import type { LineClosing } from "./plan-edit.ts";

/** Instants of a closing, which names the plant's clock. */
export function spanOfClosing(
  { from, to }: Pick<LineClosing, "from" | "to">,
  { timeZone }: Plant,
): TimeWindow {
  return {
    start: instantOfLocalText(timeZone, from) ?? 0,
    end: instantOfLocalText(timeZone, to) ?? 0,
  };
}

/** Whether two spells share some time. */
export const overlap = (one: TimeWindow, other: TimeWindow): boolean =>
  one.start < other.end && other.start < one.end;
