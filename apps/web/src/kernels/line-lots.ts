import type { LotName } from "@formweek/contracts";
import type { BoardLine, BoardSegment } from "./board-plan.ts";

/** A lot as it lies on its line, pauses included; seconds since the epoch. */
export interface LineLot extends LotName {
  readonly start: number;
  readonly end: number;
}

export function isSameLot(a: LotName, b: LotName): boolean {
  return a.orderId === b.orderId && a.lot === b.lot;
}

/** The lot that a segment belongs to; null for a change. */
export function lotOfSegment({ source }: BoardSegment): LotName | null {
  return source.kind === "change" ? null : { orderId: source.orderId, lot: source.lot };
}

/** The lots of a line in the order in which they run. */
export function lotsOfLine(line: BoardLine): readonly LineLot[] {
  const lots: LineLot[] = [];
  for (const segment of line.segments) {
    const name = lotOfSegment(segment);
    if (name === null) continue;
    const last = lots.at(-1);
    if (last !== undefined && isSameLot(last, name)) lots[lots.length - 1] = { ...last, end: segment.end };
    else lots.push({ ...name, start: segment.start, end: segment.end });
  }
  return lots;
}
