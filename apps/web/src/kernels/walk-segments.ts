import type { BoardLine, BoardPlan, BoardSegment } from "./board-plan.ts";
import { spellsInSight } from "./culling.ts";

export type WalkStep =
  | "earlier"
  | "later"
  | "line above"
  | "line below"
  | "first on line"
  | "last on line"
  | "next late"
  | "previous late";

/**
 * The segment that the keyboard reaches from `from` by one step; null when there is none that way.
 * Without a start the first segment of the first line that has one is taken. Pauses inside a lot are passed over.
 */
export function walkSegments(
  plan: BoardPlan,
  from: BoardSegment | null,
  step: WalkStep,
): BoardSegment | null {
  if (step === "next late") return lateNeighbour(plan, from, 1);
  if (step === "previous late") return lateNeighbour(plan, from, -1);
  if (from === null) return firstOf(plan);
  switch (step) {
    case "earlier":
      return alongLine(plan, from, -1);
    case "later":
      return alongLine(plan, from, 1);
    case "first on line":
      return plan.lines[from.lineIndex]?.segments.find(isWorth) ?? null;
    case "last on line":
      return plan.lines[from.lineIndex]?.segments.findLast(isWorth) ?? null;
    case "line above":
      return acrossLines(plan, from, -1);
    case "line below":
      return acrossLines(plan, from, 1);
  }
}

function isWorth(segment: BoardSegment): boolean {
  return segment.source.kind !== "stop";
}

function firstOf(plan: BoardPlan): BoardSegment | null {
  for (const line of plan.lines) {
    const segment = line.segments.find(isWorth);
    if (segment !== undefined) return segment;
  }
  return null;
}

function alongLine(plan: BoardPlan, from: BoardSegment, direction: 1 | -1): BoardSegment | null {
  const segments = plan.lines[from.lineIndex]?.segments ?? [];
  for (let place = from.place + direction; place >= 0 && place < segments.length; place += direction) {
    const segment = segments[place];
    if (segment !== undefined && isWorth(segment)) return segment;
  }
  return null;
}

function acrossLines(plan: BoardPlan, from: BoardSegment, direction: 1 | -1): BoardSegment | null {
  for (let index = from.lineIndex + direction; index >= 0 && index < plan.lines.length; index += direction) {
    const line = plan.lines[index];
    const segment = line === undefined ? null : nearestInTime(line, (from.start + from.end) / 2);
    if (segment !== null) return segment;
  }
  return null;
}

function nearestInTime(line: BoardLine, instant: number): BoardSegment | null {
  const { from } = spellsInSight(line.segments, instant, instant + 1);
  const candidates = [
    line.segments.slice(0, from).findLast(isWorth),
    line.segments.slice(from).find(isWorth),
  ].filter((segment) => segment !== undefined);
  return (
    candidates.sort((a, b) => distance(a, instant) - distance(b, instant) || a.index - b.index)[0] ?? null
  );
}

function distance(segment: BoardSegment, instant: number): number {
  return Math.max(0, segment.start - instant, instant - segment.end);
}

/** Late orders in order of where they end on the board, line by line in time; wraps around. */
function lateNeighbour(plan: BoardPlan, from: BoardSegment | null, direction: 1 | -1): BoardSegment | null {
  const late = plan.segments
    .filter((segment) => (segment.ending?.lateSeconds ?? 0) > 0)
    .sort((a, b) => a.start - b.start || a.index - b.index);
  if (late.length === 0) return null;
  if (from === null) return (direction === 1 ? late[0] : late.at(-1)) ?? null;
  const isBeyond = (segment: BoardSegment): boolean =>
    direction === 1
      ? segment.start > from.start || (segment.start === from.start && segment.index > from.index)
      : segment.start < from.start || (segment.start === from.start && segment.index < from.index);
  const next = direction === 1 ? late.find(isBeyond) : late.findLast(isBeyond);
  return next ?? (direction === 1 ? late[0] : late.at(-1)) ?? null;
}
