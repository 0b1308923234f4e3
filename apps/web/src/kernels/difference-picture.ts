import type { PlanDocument } from "@formweek/contracts";
import { secondsOf } from "./board-plan.ts";
import type { MovedRow } from "./difference-rows.ts";

/** A stretch of a lot on one of a line's two tracks; instants in seconds since the epoch. */
export interface PictureRun {
  readonly key: string;
  readonly orderId: string;
  readonly start: number;
  readonly end: number;
  readonly hasMoved: boolean;
}

/** A line on which the two plans differ, with the lots that each has there. */
export interface PictureLine {
  readonly lineId: string;
  readonly name: string;
  readonly from: readonly PictureRun[];
  readonly to: readonly PictureRun[];
}

export interface DifferencePicture {
  readonly lines: readonly PictureLine[];
  /** Where the drawing begins and ends: around what moved. */
  readonly start: number;
  readonly end: number;
}

const HOUR = 3600;
/** What lies around the moved runs is shown so far, seconds. */
const MARGIN = 6 * HOUR;

/** The lots of two plans on the lines on which they differ, over the time in which they do; null where nothing moved. */
export function differencePicture(
  from: PlanDocument,
  to: PlanDocument,
  moved: readonly MovedRow[],
): DifferencePicture | null {
  const places = moved.flatMap((row) => [row.from, row.to]).filter((place) => place !== null);
  if (places.length === 0) return null;
  const start = Math.min(...places.map((place) => place.start)) - MARGIN;
  const end = Math.max(...places.map((place) => place.end)) + MARGIN;
  const touched = new Set(places.map(({ lineId }) => lineId));
  const movedLots = new Set(moved.map(lotKey));
  const runsOf = ({ lots }: PlanDocument, lineId: string): readonly PictureRun[] =>
    lots
      .filter((lot) => lot.lineId === lineId)
      .map((lot) => ({
        key: lotKey(lot),
        orderId: lot.orderId,
        start: secondsOf(lot.start),
        end: secondsOf(lot.end),
        hasMoved: movedLots.has(lotKey(lot)),
      }))
      .filter((run) => run.start < end && run.end > start)
      .sort((a, b) => a.start - b.start);
  const names = new Map([...from.lines, ...to.lines].map(({ id, name }) => [id, name]));
  return {
    lines: Array.from(names, ([lineId, name]) => ({ lineId, name }))
      .filter(({ lineId }) => touched.has(lineId))
      .map((line) => ({ ...line, from: runsOf(from, line.lineId), to: runsOf(to, line.lineId) })),
    start,
    end,
  };
}

const lotKey = ({ orderId, lot }: { readonly orderId: string; readonly lot: number }): string =>
  JSON.stringify([orderId, lot]);
