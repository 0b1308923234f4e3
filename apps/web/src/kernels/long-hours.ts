import type { BoardSpell } from "./board-plan.ts";

/** Hours of a line or a team with one shift more. */
export interface HoursWithShift {
  /** Working hours in the calendar week in which the shift begins. */
  readonly weekHours: number;
  /** Hours from the start of the work around the shift to its end, pauses of two hours and less within it. */
  readonly stretchHours: number;
  /** Hours without work before or after that stretch, the shorter of both; null where nothing is known beside it. */
  readonly restHours: number | null;
}

const HOUR = 3600;
/** A shorter pause is a break, not a rest. */
const longestBreakSeconds = 2 * HOUR;

/** What a shift makes of working spells, which are in order of time and do not overlap; `week` holds the shift's start. */
export function hoursWithShift(
  open: readonly BoardSpell[],
  shift: BoardSpell,
  week: BoardSpell,
): HoursWithShift {
  const spells = joined([...open, shift], 0);
  const weekSeconds = spells.reduce(
    (sum, { start, end }) => sum + Math.max(0, Math.min(end, week.end) - Math.max(start, week.start)),
    0,
  );
  const stretches = joined(spells, longestBreakSeconds);
  const place = stretches.findIndex(({ start, end }) => start <= shift.start && shift.end <= end);
  const around = stretches[place] ?? shift;
  const before = stretches[place - 1];
  const after = stretches[place + 1];
  const rests = [
    ...(before === undefined ? [] : [around.start - before.end]),
    ...(after === undefined ? [] : [after.start - around.end]),
  ];
  return {
    weekHours: weekSeconds / HOUR,
    stretchHours: (around.end - around.start) / HOUR,
    restHours: rests.length === 0 ? null : Math.min(...rests) / HOUR,
  };
}

/**
 * What people may be asked for at most where the law of their place says nothing stricter: 11 h of rest in each day, so 13 h
 * of work, and 48 h a week on average. Directive 2003/88/EC, articles 3 and 6 (from memory).
 */
const LEAST_REST_HOURS = 11;
const LONGEST_STRETCH_HOURS = 24 - LEAST_REST_HOURS;
/** Hours of a person in one week, on average. */
export const LONGEST_WEEK_HOURS = 48;

/** True where one crew that worked all of it would work longer, or rest shorter, than the directive has it. */
export function isLongForOneCrew({ weekHours, stretchHours, restHours }: HoursWithShift): boolean {
  return (
    weekHours > LONGEST_WEEK_HOURS ||
    stretchHours > LONGEST_STRETCH_HOURS ||
    (restHours !== null && restHours < LEAST_REST_HOURS)
  );
}

/** Spells with those made one that lie no further apart than the gap. */
function joined(spells: readonly BoardSpell[], gapSeconds: number): readonly BoardSpell[] {
  const out: BoardSpell[] = [];
  for (const spell of [...spells].sort((a, b) => a.start - b.start)) {
    const last = out.at(-1);
    if (last === undefined || spell.start - last.end > gapSeconds) out.push(spell);
    else out[out.length - 1] = { start: last.start, end: Math.max(last.end, spell.end) };
  }
  return out;
}
