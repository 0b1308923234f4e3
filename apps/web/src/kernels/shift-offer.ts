import type { BoardSpell } from "./board-plan.ts";
import { gapsBetween } from "./culling.ts";
import { instantOfWallText, wallText } from "./wall-text.ts";
import type { ZoneClock } from "./zone-clock.ts";

/** Clock times of a shift; an end before the start lies on the next day. */
export interface ShiftTimes {
  readonly start: string;
  readonly end: string;
}

interface Hours {
  /** Sorted, none over another. */
  readonly open: readonly BoardSpell[];
  readonly closures: readonly BoardSpell[];
  readonly within: BoardSpell;
}

const daySeconds = 86_400;

/** A shift on a day, "2026-12-05", as a spell of instants; null where day or times are none. */
export function shiftSpell(clock: ZoneClock, date: string, { start, end }: ShiftTimes): BoardSpell | null {
  const from = instantOfWallText(clock, `${date}T${start}`);
  const sameDay = instantOfWallText(clock, `${date}T${end}`);
  if (from === null || sameDay === null) return null;
  if (end > start) return { start: from, end: sameDay };
  const [year = 0, month = 0, day = 0] = date.split("-").map(Number);
  const [hour = 0, minute = 0] = end.split(":").map(Number);
  return { start: from, end: clock.instantOf(year, month, day + 1, hour * 60 + minute) };
}

/**
 * Of the shifts of a pattern the first that begins in the time asked for, during which nothing is open and into which no
 * closure reaches, since a closure wins over every shift; null where there is none.
 */
export function firstFreeShift<Shift extends ShiftTimes>(
  clock: ZoneClock,
  patterns: readonly Shift[],
  { open, closures, within }: Hours,
): { readonly date: string; readonly shift: Shift } | null {
  const offers = [];
  for (let at = within.start; at < within.end + daySeconds; at += daySeconds) {
    const date = wallText(clock, at).slice(0, 10);
    for (const shift of patterns) {
      const spell = shiftSpell(clock, date, shift);
      if (spell === null || spell.start < within.start || spell.start >= within.end) continue;
      const isClosed = closures.some(({ start, end }) => start < spell.end && end > spell.start);
      const isFree = gapsBetween(open, spell.start, spell.end).some(
        (gap) => gap.start === spell.start && gap.end === spell.end,
      );
      if (isClosed) continue;
      if (isFree) offers.push({ date, shift, startAt: spell.start });
    }
  }
  return offers.sort((a, b) => a.startAt - b.startAt)[0] ?? null;
}
