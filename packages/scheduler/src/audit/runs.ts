import { workingBetween } from "@formweek/capacity-model";
import type { RunSegment, StopSegment } from "../plan/plan.ts";
import type { JobOption } from "../problem/problem-data.ts";
import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import type { LotOnLine } from "./plan-look-ups.ts";
import { finding } from "./finding.ts";
import { sayDuration, sayInstant } from "./wording.ts";

function lotSubject(lot: LotOnLine, at: number) {
  return { lineId: lot.lineId, orderId: lot.orderId, at };
}

function sayLot(lot: LotOnLine): string {
  return `order ${lot.orderId} lot ${lot.lot + 1}`;
}

/** Whether a segment is on the lot's line and, where it runs, as the lot does. */
function belongs(lot: LotOnLine, first: RunSegment, segment: RunSegment | StopSegment): boolean {
  if (segment.lineId !== first.lineId) return false;
  return (
    segment.kind !== "run" ||
    (segment.setupId === first.setupId &&
      segment.productId === lot.job.productId &&
      segment.mould?.mouldId === first.mould?.mouldId &&
      segment.mould?.copy === first.mould?.copy)
  );
}

/** One line, one set-up, one mould, the order's own product; no gaps, a run at either end. */
function lotForm(context: AuditContext, lot: LotOnLine): Violation[] {
  const first = lot.stretches[0] as RunSegment;
  const found: Violation[] = [];
  let earlier: RunSegment | StopSegment | null = null;
  let isScattered = false;
  for (const segment of lot.segments) {
    if (!isScattered && !belongs(lot, first, segment)) {
      isScattered = true;
      const text = `The segments of ${sayLot(lot)} differ in line, set-up, mould or product ${sayInstant(context.problem, segment.start)}.`;
      found.push(finding("lot-scattered", lotSubject(lot, segment.start), text));
    }
    if (earlier !== null && earlier.end !== segment.start) {
      const text = `Between two segments of ${sayLot(lot)} lie ${sayDuration(segment.start - earlier.end)} without a reason.`;
      found.push(finding("lot-broken", lotSubject(lot, earlier.end), text));
    }
    earlier = segment;
  }
  for (const edge of [lot.segments[0], lot.segments[lot.segments.length - 1]]) {
    if (edge?.kind !== "stop") continue;
    const text = `The ${sayLot(lot)} begins or ends with a stop of ${sayDuration(edge.end - edge.start)}; stops lie inside a lot.`;
    found.push(finding("lot-broken", lotSubject(lot, edge.start), text));
  }
  return found;
}

function openHours(context: AuditContext, lot: LotOnLine): Violation[] {
  const found: Violation[] = [];
  for (const { start, end } of lot.stretches) {
    const closed = end - start - workingBetween(lot.line.workingTime, start, end);
    if (closed === 0) continue;
    const text = `Line ${lot.lineId} runs ${sayLot(lot)} from ${sayInstant(context.problem, start)}, ${sayDuration(closed)} of it in closed time.`;
    found.push(finding("runs-while-closed", lotSubject(lot, start), text));
  }
  return found;
}

/** Warm-up is made after every pause longer than the line's limit, all of it, and at no other time. */
function warmUps({ problem }: AuditContext, lot: LotOnLine): Violation[] {
  const { id, restartLimitSeconds, restartWarmUpSeconds } = lot.line;
  const found: Violation[] = [];
  let paused = 0;
  let due = 0;
  for (const segment of lot.segments) {
    const length = segment.end - segment.start;
    if (segment.kind === "stop" && segment.reason !== "warm-up") {
      paused += length;
      continue;
    }
    if (paused > restartLimitSeconds) due = restartWarmUpSeconds;
    paused = 0;
    if (segment.kind === "stop") {
      if (length > due || length === 0) {
        const text = `Line ${id} warms up for ${sayDuration(length)} in ${sayLot(lot)} ${sayInstant(problem, segment.start)}; ${sayDuration(due)} are due.`;
        found.push(finding("warm-up-not-due", lotSubject(lot, segment.start), text));
      }
      due = Math.max(0, due - length);
      continue;
    }
    if (due > 0) {
      const text = `Line ${id} forms pieces of ${sayLot(lot)} ${sayInstant(problem, segment.start)}; ${sayDuration(due)} of warm-up are missing after a pause longer than ${sayDuration(restartLimitSeconds)}.`;
      found.push(finding("warm-up-missing", lotSubject(lot, segment.start), text));
    }
    due = 0;
  }
  return found;
}

/** Pieces formed in a number of running seconds. */
function piecesAt(option: JobOption, seconds: number): number {
  return Math.floor((seconds + 1e-9) / option.secondsPerPiece);
}

function secondsFor(option: JobOption, pieces: number): number {
  return Math.ceil(pieces * option.secondsPerPiece - 1e-9);
}

/** The lot runs exactly as long as its pieces need, and each stretch holds the pieces of its time. */
function rate(option: JobOption, lot: LotOnLine): Violation[] {
  const found: Violation[] = [];
  let seconds = 0;
  let pieces = 0;
  const last = lot.stretches[lot.stretches.length - 1];
  for (const stretch of lot.stretches) {
    seconds += stretch.end - stretch.start;
    pieces += stretch.pieces;
    if (stretch === last) break;
    const made = piecesAt(option, seconds);
    // One piece more or less is a matter of rounding, as long as the time suffices.
    if (Math.abs(pieces - made) <= 1 && secondsFor(option, pieces) <= seconds) continue;
    const text = `After ${sayDuration(seconds)} of running ${sayLot(lot)} is said to have ${pieces} pieces; the rate gives ${made}.`;
    found.push(finding("wrong-stretch-pieces", lotSubject(lot, stretch.start), text));
  }
  const needed = secondsFor(option, lot.pieces);
  if (seconds !== needed) {
    const text = `${lot.pieces} pieces of ${sayLot(lot)} need ${sayDuration(needed)} of running on line ${lot.lineId}; the plan has ${sayDuration(seconds)}.`;
    found.push(finding("wrong-run-time", lotSubject(lot, lot.start), text));
  }
  return found;
}

function orphans(stops: readonly StopSegment[]): Violation[] {
  return stops.map((stop) =>
    finding(
      "lot-broken",
      { ...stop, at: stop.start },
      `Line ${stop.lineId} stops for order ${stop.orderId} lot ${stop.lot + 1}, which never runs.`,
    ),
  );
}

/** Everything lies between the horizon's start and its end. */
function horizon({ problem, plan }: AuditContext): Violation[] {
  const { start, end } = problem.horizon;
  const found: Violation[] = [];
  for (const segment of plan.segments) {
    if (segment.start >= start && segment.end <= end) continue;
    const orderId = segment.kind === "change" ? null : segment.orderId;
    const text = `Line ${segment.lineId} has a ${segment.kind} from ${sayInstant(problem, segment.start)} for ${sayDuration(segment.end - segment.start)}; the plan covers ${sayDuration(end - start)}.`;
    found.push(finding("outside-horizon", { lineId: segment.lineId, orderId, at: segment.start }, text));
  }
  return found;
}

/** Rule 4: runs lie in the line's working time and last as long as their pieces need, with warm-up where it is due. */
export function runs(context: AuditContext): Violation[] {
  const found = horizon(context);
  for (const lot of context.lots) {
    found.push(...lotForm(context, lot), ...openHours(context, lot), ...warmUps(context, lot));
    if (lot.option !== null) found.push(...rate(lot.option, lot));
  }
  found.push(...orphans(context.orphanStops));
  return found;
}
