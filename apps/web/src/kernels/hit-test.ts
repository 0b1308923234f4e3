import type { BoardLine, BoardPlan, BoardSegment } from "./board-plan.ts";
import { spellsInSight } from "./culling.ts";
import { rowAtY, type RowLayout } from "./row-layout.ts";
import { instantAtX, type TimeView } from "./time-scale.ts";

/** What lies at a place of the board. A gap is time of a line without a segment, bounded by its neighbours. */
export type BoardHit =
  | { readonly kind: "segment"; readonly index: number }
  | { readonly kind: "gap"; readonly lineIndex: number; readonly start: number; readonly end: number }
  | { readonly kind: "line"; readonly lineIndex: number }
  | { readonly kind: "nothing" };

export interface BoardPoint {
  readonly x: number;
  readonly y: number;
}

/** Narrow segments (a gate in a wide view) can be hit up to so many pixels beside them. */
const reachPx = 4;

/** What is under a point of the canvas, in CSS pixels. */
export function hitTest(
  plan: BoardPlan,
  layout: RowLayout,
  view: TimeView & { readonly scrollPx: number },
  point: BoardPoint,
): BoardHit {
  const row = rowAtY(layout, view.scrollPx, point.y);
  const line = row === null ? undefined : plan.lines[row];
  if (line === undefined) return { kind: "nothing" };
  if (point.x < layout.labelWidthPx) return { kind: "line", lineIndex: line.index };
  const instant = instantAtX(view, point.x - layout.labelWidthPx);
  const segment = segmentAt(line, instant) ?? narrowSegmentNear(line, instant, view.secondsPerPx);
  if (segment !== undefined) return { kind: "segment", index: segment.index };
  const gap = gapAt(plan, line, instant);
  const isWithinPlan = gap.start <= instant && instant < gap.end;
  return isWithinPlan
    ? { kind: "gap", lineIndex: line.index, ...gap }
    : { kind: "line", lineIndex: line.index };
}

/** The segment of a line that covers an instant. */
function segmentAt(line: BoardLine, instant: number): BoardSegment | undefined {
  const { from, to } = spellsInSight(line.segments, instant, instant + 1);
  const segment = from < to ? line.segments[from] : undefined;
  return segment !== undefined && segment.start <= instant && instant < segment.end ? segment : undefined;
}

/** The free time of a line around an instant that no segment covers, cut at the plan's start and end. */
function gapAt(
  plan: BoardPlan,
  line: BoardLine,
  instant: number,
): { readonly start: number; readonly end: number } {
  const { to } = spellsInSight(line.segments, -Infinity, instant);
  const before = line.segments[to - 1];
  const after = line.segments[to];
  return {
    start: before?.end ?? plan.startAt,
    end: after?.start ?? Math.max(plan.knownEndAt, before?.end ?? plan.startAt),
  };
}

function narrowSegmentNear(line: BoardLine, instant: number, secondsPerPx: number): BoardSegment | undefined {
  const reach = reachPx * secondsPerPx;
  const { from, to } = spellsInSight(line.segments, instant - reach, instant + reach);
  return line.segments
    .slice(from, to)
    .find((segment) => (segment.end - segment.start) / secondsPerPx < 2 * reachPx);
}
