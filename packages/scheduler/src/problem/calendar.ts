import type { WorkingTime } from "@formweek/capacity-model";

/** An instant or duration that lies beyond every horizon; seconds. Fits 31 bits. */
export const NEVER = 2_000_000_000;

/**
 * Working time of one line, team or crew inside the horizon, compiled for speed. Instants are seconds after the horizon's
 * start. Two cell tables give a first guess of the spell, so that every question is O(1) but for a step or two.
 */
export interface Calendar {
  /** [spell] s; half-open, sorted, disjoint, not touching. */
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** [spell] s of work before the spell. */
  readonly before: Int32Array;
  readonly total: number;
  /** One spell over the whole horizon: the answers are plain sums. */
  readonly alwaysOpen: boolean;
  readonly horizon: number;
  /** [t >> shift] last spell that starts at or before the cell's first instant, or -1. */
  readonly byTime: Int32Array;
  readonly timeShift: number;
  /** [w >> shift] last spell whose `before` is at or below the cell's first amount. */
  readonly byWork: Int32Array;
  readonly workShift: number;
}

function shiftFor(range: number): number {
  let shift = 0;
  while (range >> shift > 2048) shift++;
  return shift;
}

function cellTable(keys: Int32Array, range: number, shift: number): Int32Array {
  const cells = new Int32Array((range >> shift) + 2);
  let spell = -1;
  for (let cell = 0; cell < cells.length; cell++) {
    const first = cell << shift;
    while (spell + 1 < keys.length && keys[spell + 1]! <= first) spell++;
    cells[cell] = spell;
  }
  return cells;
}

/** Compiles spells (seconds after the horizon's start, sorted, disjoint) cut to [0, horizon). */
export function calendarOfSpells(spells: readonly (readonly [number, number])[], horizon: number): Calendar {
  const cut: [number, number][] = [];
  for (const [from, to] of spells) {
    const start = Math.max(0, from);
    const end = Math.min(horizon, to);
    if (end <= start) continue;
    const last = cut[cut.length - 1];
    if (last !== undefined && last[1] >= start) last[1] = Math.max(last[1], end);
    else cut.push([start, end]);
  }
  const starts = Int32Array.from(cut, (spell) => spell[0]);
  const ends = Int32Array.from(cut, (spell) => spell[1]);
  const before = new Int32Array(cut.length);
  let total = 0;
  for (let i = 0; i < cut.length; i++) {
    before[i] = total;
    total += ends[i]! - starts[i]!;
  }
  const timeShift = shiftFor(horizon);
  const workShift = shiftFor(total);
  return {
    starts,
    ends,
    before,
    total,
    alwaysOpen: total === horizon && cut.length === 1,
    horizon,
    byTime: cellTable(starts, horizon, timeShift),
    timeShift,
    byWork: cellTable(before, total, workShift),
    workShift,
  };
}

/** Compiles capacity-model working time; `origin` is the horizon's start. */
export function calendarOf(time: WorkingTime, origin: number, horizon: number): Calendar {
  return calendarOfSpells(
    time.starts.map((start, i) => [start - origin, time.ends[i]! - origin] as const),
    horizon,
  );
}

/** Hours in which both are open. O(n + m). */
export function commonHours(one: Calendar, other: Calendar): Calendar {
  const spells: [number, number][] = [];
  for (let i = 0, j = 0; i < one.starts.length && j < other.starts.length;) {
    const from = Math.max(one.starts[i]!, other.starts[j]!);
    const to = Math.min(one.ends[i]!, other.ends[j]!);
    if (to > from) spells.push([from, to]);
    if (one.ends[i]! <= other.ends[j]!) i++;
    else j++;
  }
  return calendarOfSpells(spells, one.horizon);
}

/** Last spell that starts at or before t, or -1. */
export function spellAt(calendar: Calendar, t: number): number {
  if (t < 0) return -1;
  const { starts } = calendar;
  let spell = calendar.byTime[Math.min(t, calendar.horizon) >> calendar.timeShift]!;
  while (spell + 1 < starts.length && starts[spell + 1]! <= t) spell++;
  return spell;
}

/** First open instant at or after t; NEVER when there is none. */
export function nextOpen(calendar: Calendar, t: number): number {
  if (calendar.alwaysOpen) return t < 0 ? 0 : t < calendar.horizon ? t : NEVER;
  const spell = spellAt(calendar, t);
  if (spell >= 0 && t < calendar.ends[spell]!) return t;
  return spell + 1 < calendar.starts.length ? calendar.starts[spell + 1]! : NEVER;
}

/** Seconds of work before t. */
export function workedBefore(calendar: Calendar, t: number): number {
  if (calendar.alwaysOpen) return t < 0 ? 0 : Math.min(t, calendar.horizon);
  const spell = spellAt(calendar, t);
  if (spell < 0) return 0;
  return calendar.before[spell]! + Math.min(t, calendar.ends[spell]!) - calendar.starts[spell]!;
}

/** Earliest instant at which `work` seconds in all have been worked since the horizon's start; NEVER past the last spell. */
function instantOfWork(calendar: Calendar, work: number): number {
  if (work > calendar.total) return NEVER;
  const { before } = calendar;
  if (work <= 0) return calendar.starts.length > 0 ? calendar.starts[0]! : NEVER;
  let spell = calendar.byWork[work >> calendar.workShift]!;
  while (spell + 1 < before.length && before[spell + 1]! < work) spell++;
  while (before[spell]! >= work) spell--;
  return calendar.starts[spell]! + work - before[spell]!;
}

/** Earliest instant by which `work` seconds have passed since t; t itself for no work; NEVER when time runs out. */
export function addWork(calendar: Calendar, t: number, work: number): number {
  if (work <= 0) return t;
  if (t >= calendar.horizon) return NEVER;
  if (calendar.alwaysOpen) {
    const end = (t < 0 ? 0 : t) + work;
    return end <= calendar.horizon ? end : NEVER;
  }
  return instantOfWork(calendar, workedBefore(calendar, t) + work);
}

/** Latest-looking instant from which `work` seconds fit before t; 0 when they do not fit. */
export function subtractWork(calendar: Calendar, t: number, work: number): number {
  const target = workedBefore(calendar, t) - work;
  if (target <= 0) return 0;
  return instantOfWork(calendar, target);
}
