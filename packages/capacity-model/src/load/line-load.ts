import { intersectWorkingTimes, subtractWorkingTime } from "../calendar/working-sets.ts";
import { workingBetween, workingTimeOf } from "../calendar/working-time.ts";
import type { WorkingTime } from "../calendar/working-time.ts";
import type { Bucket } from "./buckets.ts";

/** What a line is planned or reported to do over [start, end), by the wall clock. */
export interface LoadSegment {
  readonly lineId: string;
  readonly kind: "run" | "change" | "stop";
  readonly start: number;
  readonly end: number;
}

/** Time of one line: its calendar, and the spells of it in which the line stands (breakdown, maintenance, no staff). */
export interface LineTime {
  readonly lineId: string;
  readonly calendarTime: WorkingTime;
  readonly standstill: WorkingTime;
}

/**
 * Seconds of one line in one bucket. The first five add up to the bucket's length:
 * run + change + stop + idle + closed = total, and in the terms of ISA-95 (IEC 62264, from memory)
 * committed (run + change) + available (idle) + unattainable (stop + closed) = total.
 */
export interface LineLoad {
  readonly lineId: string;
  readonly bucket: Bucket;
  readonly runSeconds: number;
  readonly changeSeconds: number;
  /** Calendar time in which the line stands: closures of the line and reported stops. */
  readonly stopSeconds: number;
  readonly idleSeconds: number;
  /** Outside the line's calendar. */
  readonly closedSeconds: number;
  readonly committedSeconds: number;
  readonly availableSeconds: number;
  readonly unattainableSeconds: number;
  readonly totalSeconds: number;
  /** Part of `closedSeconds` in which setters change the line all the same. */
  readonly changeWhileClosedSeconds: number;
  /** committed / (committed + available); null where the line cannot work at all. */
  readonly loadShare: number | null;
}

/**
 * Load and capacity of each line in each bucket, lines first, in the given order. Only calendar time counts as run or
 * change; where segments of one line overlap, run goes before change and change before stop, so no second counts twice.
 * Segments of unknown lines and buckets without length count nothing.
 */
export function lineLoads(
  lines: readonly LineTime[],
  segments: readonly LoadSegment[],
  buckets: readonly Bucket[],
): readonly LineLoad[] {
  return lines.flatMap((line) => {
    const split = splitTime(
      line,
      segments.filter((segment) => segment.lineId === line.lineId),
    );
    return buckets.map((bucket) => loadIn(line.lineId, split, bucket));
  });
}

/** The loads of several lines in one bucket added up, as a plant or a group of lines; null for no loads. */
export function sumOfLoads(loads: readonly LineLoad[], lineId: string): LineLoad | null {
  const [first] = loads;
  if (first === undefined) return null;
  const sum = (pick: (load: LineLoad) => number): number =>
    loads.reduce((total, load) => total + pick(load), 0);
  return completed({
    lineId,
    bucket: first.bucket,
    runSeconds: sum((load) => load.runSeconds),
    changeSeconds: sum((load) => load.changeSeconds),
    stopSeconds: sum((load) => load.stopSeconds),
    idleSeconds: sum((load) => load.idleSeconds),
    closedSeconds: sum((load) => load.closedSeconds),
    changeWhileClosedSeconds: sum((load) => load.changeWhileClosedSeconds),
  });
}

interface SplitTime {
  readonly run: WorkingTime;
  readonly change: WorkingTime;
  readonly stop: WorkingTime;
  readonly idle: WorkingTime;
  readonly changeWhileClosed: WorkingTime;
}

function splitTime(line: LineTime, segments: readonly LoadSegment[]): SplitTime {
  const spells = (kind: LoadSegment["kind"]): WorkingTime =>
    workingTimeOf(
      segments
        .filter((segment) => segment.kind === kind)
        .map(({ start, end }): [number, number] => [start, end]),
    );
  const attainable = subtractWorkingTime(line.calendarTime, line.standstill);
  const run = intersectWorkingTimes(spells("run"), attainable);
  const afterRun = subtractWorkingTime(attainable, run);
  const change = intersectWorkingTimes(spells("change"), afterRun);
  const afterChange = subtractWorkingTime(afterRun, change);
  const idle = subtractWorkingTime(afterChange, spells("stop"));
  const working = subtractWorkingTime(attainable, subtractWorkingTime(afterChange, idle));
  return {
    run,
    change,
    stop: subtractWorkingTime(line.calendarTime, working),
    idle,
    changeWhileClosed: subtractWorkingTime(spells("change"), line.calendarTime),
  };
}

function loadIn(lineId: string, split: SplitTime, bucket: Bucket): LineLoad {
  const inBucket = (time: WorkingTime): number => workingBetween(time, bucket.start, bucket.end);
  const runSeconds = inBucket(split.run);
  const changeSeconds = inBucket(split.change);
  const stopSeconds = inBucket(split.stop);
  const idleSeconds = inBucket(split.idle);
  const total = Math.max(0, bucket.end - bucket.start);
  return completed({
    lineId,
    bucket,
    runSeconds,
    changeSeconds,
    stopSeconds,
    idleSeconds,
    closedSeconds: total - runSeconds - changeSeconds - stopSeconds - idleSeconds,
    changeWhileClosedSeconds: inBucket(split.changeWhileClosed),
  });
}

type LoadParts = Omit<
  LineLoad,
  "committedSeconds" | "availableSeconds" | "unattainableSeconds" | "totalSeconds" | "loadShare"
>;

function completed(parts: LoadParts): LineLoad {
  const committedSeconds = parts.runSeconds + parts.changeSeconds;
  const availableSeconds = parts.idleSeconds;
  const unattainableSeconds = parts.stopSeconds + parts.closedSeconds;
  const attainable = committedSeconds + availableSeconds;
  return {
    ...parts,
    committedSeconds,
    availableSeconds,
    unattainableSeconds,
    totalSeconds: committedSeconds + availableSeconds + unattainableSeconds,
    loadShare: attainable === 0 ? null : committedSeconds / attainable,
  };
}
