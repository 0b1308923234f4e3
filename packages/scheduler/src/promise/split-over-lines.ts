import type { Job } from "../problem/problem-data.ts";
import type { Work } from "../work/work.ts";
import { ANY_TIME, type Insertion, type InsertionRoom, type PlacedLot } from "./insertion.ts";
import { oneLot } from "./one-lot.ts";
import type { LotSteps, Place } from "./place-bounds.ts";
import { inTwoLots } from "./two-lots.ts";

/** An order whose lots have their places on two lines. */
export interface SplitLots {
  readonly kind: "placed";
  /** To be given back. */
  readonly insertion: Insertion;
  /** s before the end in one lot; null where that has no place */
  readonly earlierBy: number | null;
}

export type NoSplit = "too-small" | "one-line" | "no-gain";

/** Two lots and the instant, s, at which the later one ends. */
interface Found {
  readonly pieces: number;
  readonly first: Place;
  readonly second: Place;
  readonly end: number;
}

/** The shares of one line: the lot there grows while it ends first, and shrinks while the other does. */
function* bestShare(
  insertion: Insertion,
  { line, steps, before }: { readonly line: number; readonly steps: LotSteps; readonly before: number },
): Work<Found | null> {
  const { options } = insertion.problem;
  const here = insertion.optionsOf(0).filter((option) => options.line[option] === line);
  const elsewhere = insertion.optionsOf(1).filter((option) => options.line[option] !== line);
  let best: Found | null = null;
  let by = before - 1;
  for (let low = 0, high = steps.count; low <= high;) {
    yield;
    const count = (low + high) >> 1;
    const pieces = steps.first + count * steps.unit;
    insertion.share(pieces);
    const first = insertion.earliest(here, by);
    if (first === null) {
      high = count - 1;
      continue;
    }
    insertion.putIn(first.place, by);
    const second = insertion.earliest(elsewhere, by);
    const end: number = second === null ? 0 : lastEnd(insertion, first, second);
    insertion.takeBack();
    if (second !== null) {
      best = { pieces, first: first.place, second: second.place, end };
      by = end - 1;
    }
    if (second !== null && second.end < first.end) high = count - 1;
    else low = count + 1;
  }
  return best;
}

/** When the later of the two ends, s: the second may have shifted the first within its limit. */
function lastEnd(insertion: Insertion, first: PlacedLot, second: PlacedLot): number {
  insertion.putIn(second.place, second.end);
  const end = Math.max(insertion.endOf(first.place), insertion.endOf(second.place));
  insertion.takeBack();
  return end;
}

/**
 * The order in two lots on two lines at once, at the shares at which the later of them ends first: for each line that may take
 * a part, bisected until both parts end about alike, each part at its earliest place. Only what ends before the order in one lot
 * would, and leaves every other order in time.
 */
export function* splitOverLines(
  room: InsertionRoom,
  order: Job,
): Work<SplitLots | { readonly kind: "none"; readonly reason: NoSplit }> {
  const two = inTwoLots(order);
  if (two === null) return { kind: "none", reason: "too-small" };
  if (new Set(order.options.map(({ lineId }) => lineId)).size < 2)
    return { kind: "none", reason: "one-line" };
  const whole = oneLot(room, order);
  if (whole.kind === "placed") room.giveBack(whole.insertion);
  const wholeEnd = whole.kind === "placed" ? whole.end : null;
  yield;
  const insertion = room.lend(two.order);
  const lines = [...new Set(insertion.optionsOf(0).map((option) => insertion.problem.options.line[option]!))];
  let best: Found | null = null;
  for (const line of lines) {
    const before: number = best?.end ?? wholeEnd ?? ANY_TIME + 1;
    best = (yield* bestShare(insertion, { line, steps: two.steps, before })) ?? best;
  }
  if (best === null) {
    room.giveBack(insertion);
    return { kind: "none", reason: "no-gain" };
  }
  insertion.share(best.pieces);
  insertion.putIn(best.first, best.end);
  insertion.putIn(best.second, best.end);
  return { kind: "placed", insertion, earlierBy: wholeEnd === null ? null : wholeEnd - best.end };
}
