import { calendarOf, calendarOfSpells, NEVER, type Calendar } from "./calendar.ts";
import type { HeadProfile } from "./compiled-problem.ts";
import type { OperatorSupply, ProblemData } from "./problem-data.ts";

/** Heads of a pool over the horizon: the sum of the crews that are at work. */
function headsOf(pool: OperatorSupply, origin: number, horizon: number): HeadProfile {
  const steps = new Map<number, number>([[0, 0]]);
  const add = (at: number, heads: number): void => {
    steps.set(at, (steps.get(at) ?? 0) + heads);
  };
  for (const crew of pool.crews) {
    const calendar = calendarOf(crew.workingTime, origin, horizon);
    calendar.starts.forEach((start, i) => {
      add(start, crew.hundredths);
      add(calendar.ends[i]!, -crew.hundredths);
    });
  }
  const sorted = [...steps].sort((a, b) => a[0] - b[0]);
  let heads = 0;
  return {
    at: Int32Array.from(sorted, ([at]) => at),
    free: Int32Array.from(sorted, ([, step]) => (heads += step)),
  };
}

/** The part of a calendar in which the pool could man the line if it ran alone. */
function mannedPart(calendar: Calendar, heads: HeadProfile, need: number): Calendar {
  const spells: [number, number][] = [];
  let step = 0;
  calendar.starts.forEach((start, i) => {
    const end = calendar.ends[i]!;
    while (step + 1 < heads.at.length && heads.at[step + 1]! <= start) step++;
    let at = step;
    for (let from = start; from < end; at++) {
      const to = Math.min(end, at + 1 < heads.at.length ? heads.at[at + 1]! : NEVER);
      if (heads.free[at]! >= need) spells.push([from, to]);
      from = to;
    }
  });
  return calendarOfSpells(spells, calendar.horizon);
}

/** True when all lines of the pool that may run at some instant ever need more heads than are there. */
function canBeShort(heads: HeadProfile, users: readonly { calendar: Calendar; need: number }[]): boolean {
  const steps: [at: number, change: number][] = [];
  heads.at.forEach((at, i) => {
    steps.push([at, heads.free[i]! - (i > 0 ? heads.free[i - 1]! : 0)]);
  });
  for (const { calendar, need } of users) {
    calendar.starts.forEach((start, i) => {
      steps.push([start, -need], [calendar.ends[i]!, need]);
    });
  }
  steps.sort((a, b) => a[0] - b[0]);
  let free = 0;
  for (let i = 0; i < steps.length; i++) {
    free += steps[i]![1];
    const lastAtThisInstant = i + 1 === steps.length || steps[i + 1]![0] > steps[i]![0];
    if (lastAtThisInstant && free < 0 && steps[i]![0] < NEVER) return true;
  }
  return false;
}

/** Calendars of the lines, cut to the hours that their pool can man, and the pools that may be short when lines run together. */
export function compileCrews(
  data: ProblemData,
  horizon: number,
): {
  readonly calendar: readonly Calendar[];
  readonly runCalendar: readonly Calendar[];
  readonly poolOfLine: Int32Array;
  readonly pools: readonly (HeadProfile | null)[];
} {
  const origin = data.horizon.start;
  const heads = data.pools.map((pool) => headsOf(pool, origin, horizon));
  const calendar = data.lines.map((line) => calendarOf(line.workingTime, origin, horizon));
  const named = data.lines.map((line) =>
    line.operatorsHundredths > 0 ? data.pools.findIndex((pool) => pool.id === line.poolId) : -1,
  );
  const runCalendar = data.lines.map((line, l) => {
    const profile = heads[named[l]!];
    return profile === undefined ? calendar[l]! : mannedPart(calendar[l]!, profile, line.operatorsHundredths);
  });
  const pools = heads.map((profile, p) => {
    const users = data.lines.flatMap((line, l) =>
      named[l] === p ? [{ calendar: runCalendar[l]!, need: line.operatorsHundredths }] : [],
    );
    return canBeShort(profile, users) ? profile : null;
  });
  const poolOfLine = Int32Array.from(named, (pool) => (pool >= 0 && pools[pool] !== null ? pool : -1));
  return { calendar, runCalendar, poolOfLine, pools };
}
