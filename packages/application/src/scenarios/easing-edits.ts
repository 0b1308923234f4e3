import { clipWorkingTime, spellsOf, subtractWorkingTime, workingTimeOf } from "@formweek/capacity-model";
import type { Plan, ProblemData, ProblemEdit } from "@formweek/scheduler";

/** Longest shift that is put forward, s. The law of the place may allow less. */
const SHIFT_SECONDS = 8 * 3600;
/** Shortest closed spell that is worth a shift, s. */
const LEAST_SHIFT = 2 * 3600;
/** Moulds that get another copy, and lines that get a shift, each one by itself. */
const MOST_COPIES = 6;
const MOST_SHIFTS = 3;

/**
 * Edits that could make a plan cheaper in which no order is late: another copy of the moulds that are mounted most often, and a shift
 * for the lines that run longest; where orders found no room, for the lines that may make them. Pure.
 */
export function easingEdits(problem: ProblemData, plan: Plan): readonly ProblemEdit[] {
  const mounted = new Map<string, number>();
  const running = new Map<string, number>();
  for (const segment of plan.segments) {
    if (segment.kind === "change" && segment.mouldIn !== null) count(mounted, segment.mouldIn.mouldId, 1);
    if (segment.kind === "run") count(running, segment.lineId, segment.end - segment.start);
  }
  const copies = mostOf(mounted)
    .filter((mouldId) => (mounted.get(mouldId) ?? 0) > 1)
    .slice(0, MOST_COPIES)
    .map((mouldId): ProblemEdit => ({ kind: "mould copy", mouldId }));
  const left = new Set(plan.unplanned.map(({ orderId }) => orderId));
  const wanted = new Set(
    problem.jobs
      .filter(({ orderId }) => left.has(orderId))
      .flatMap(({ options }) => options.map(({ lineId }) => lineId)),
  );
  const shifts = mostOf(running)
    .filter((lineId) => left.size === 0 || wanted.has(lineId))
    .flatMap((lineId) => shiftFor(problem, plan, lineId) ?? [])
    .slice(0, MOST_SHIFTS);
  return [...shifts, ...copies];
}

function count(counts: Map<string, number>, id: string, more: number): void {
  counts.set(id, (counts.get(id) ?? 0) + more);
}

/** Ids by what is counted, the most first. */
function mostOf(counts: ReadonlyMap<string, number>): readonly string[] {
  return [...counts].sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1)).map(([id]) => id);
}

/** The longest spell in which the line stands while the plan goes on, cut to a shift; the earliest of equals. */
function shiftFor({ lines, horizon }: ProblemData, { lots }: Plan, lineId: string): ProblemEdit | null {
  const line = lines.find(({ id }) => id === lineId);
  const end = lots.reduce(
    (last, lot) => (lot.lineId === lineId ? Math.max(last, lot.end) : last),
    horizon.start,
  );
  if (line === undefined || end <= horizon.start) return null;
  const closed = subtractWorkingTime(
    workingTimeOf([[horizon.start, end]]),
    clipWorkingTime(line.workingTime, horizon.start, end),
  );
  const [longest] = spellsOf(closed)
    .map(([from, to]) => ({ from, to: Math.min(to, from + SHIFT_SECONDS) }))
    .filter(({ from, to }) => to - from >= LEAST_SHIFT)
    .sort((a, b) => b.to - b.from - (a.to - a.from) || a.from - b.from);
  return longest === undefined ? null : { kind: "extra shift", lineId, ...longest };
}
