import { workingBetween } from "@formweek/capacity-model";
import type { RunSegment, StopSegment } from "../plan/plan.ts";
import type { JobOption, ProblemLine } from "../problem/problem-data.ts";
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

/** One line, one set-up, one mould, the order's own product; no gaps, a run at either end. */
function lotForm(context: AuditContext, lot: LotOnLine): Violation[] {
  const first = lot.stretches[0] as RunSegment;
  const found: Violation[] = [];
  const productId = context.jobs.get(lot.orderId)?.productId;
  const scattered = lot.segments.find(
    (segment) =>
      segment.lineId !== first.lineId ||
      (segment.kind === "run" &&
        (segment.setupId !== first.setupId ||
          segment.productId !== productId ||
          segment.mould?.mouldId !== first.mould?.mouldId ||
          segment.mould?.copy !== first.mould?.copy)),
  );
  if (scattered !== undefined) {
    const text = `The segments of ${sayLot(lot)} differ in line, set-up, mould or product ${sayInstant(context.problem, scattered.start)}.`;
    found.push(finding("lot-scattered", lotSubject(lot, scattered.start), text));
  }
  lot.segments.forEach((segment, index) => {
    const earlier = lot.segments[index - 1];
    if (earlier === undefined || earlier.end === segment.start) return;
    const text = `Between two segments of ${sayLot(lot)} lie ${sayDuration(segment.start - earlier.end)} without a reason.`;
    found.push(finding("lot-broken", lotSubject(lot, earlier.end), text));
  });
  for (const edge of [lot.segments[0], lot.segments[lot.segments.length - 1]]) {
    if (edge?.kind !== "stop") continue;
    const text = `The ${sayLot(lot)} begins or ends with a stop of ${sayDuration(edge.end - edge.start)}; stops lie inside a lot.`;
    found.push(finding("lot-broken", lotSubject(lot, edge.start), text));
  }
  return found;
}

function openHours(context: AuditContext, line: ProblemLine, lot: LotOnLine): Violation[] {
  return lot.stretches.flatMap((stretch) => {
    const closed = stretch.end - stretch.start - workingBetween(line.workingTime, stretch.start, stretch.end);
    if (closed === 0) return [];
    const text = `Line ${line.id} runs ${sayLot(lot)} from ${sayInstant(context.problem, stretch.start)}, ${sayDuration(closed)} of it in closed time.`;
    return [finding("runs-while-closed", lotSubject(lot, stretch.start), text)];
  });
}

/** Warm-up is made after every pause longer than the line's limit, all of it, and at no other time. */
function warmUps(context: AuditContext, line: ProblemLine, lot: LotOnLine): Violation[] {
  const found: Violation[] = [];
  let paused = 0;
  let due = 0;
  const restart = () => {
    if (paused > line.restartLimitSeconds) due = line.restartWarmUpSeconds;
    paused = 0;
  };
  for (const segment of lot.segments) {
    const length = segment.end - segment.start;
    const at = () => sayInstant(context.problem, segment.start);
    if (segment.kind === "stop" && segment.reason !== "warm-up") {
      paused += length;
      continue;
    }
    restart();
    if (segment.kind === "stop") {
      if (length > due || length === 0) {
        const text = `Line ${line.id} warms up for ${sayDuration(length)} in ${sayLot(lot)} ${at()}; ${sayDuration(due)} are due.`;
        found.push(finding("warm-up-not-due", lotSubject(lot, segment.start), text));
      }
      due = Math.max(0, due - length);
      continue;
    }
    if (due > 0) {
      const text = `Line ${line.id} forms pieces of ${sayLot(lot)} ${at()}; ${sayDuration(due)} of warm-up are missing after a pause longer than ${sayDuration(line.restartLimitSeconds)}.`;
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
  lot.stretches.forEach((stretch, index) => {
    seconds += stretch.end - stretch.start;
    pieces += stretch.pieces;
    if (index === lot.stretches.length - 1) return;
    const made = piecesAt(option, seconds);
    // One piece more or less is a matter of rounding, as long as the time suffices.
    if (Math.abs(pieces - made) <= 1 && secondsFor(option, pieces) <= seconds) return;
    const text = `After ${sayDuration(seconds)} of running ${sayLot(lot)} is said to have ${pieces} pieces; the rate gives ${made}.`;
    found.push(finding("wrong-stretch-pieces", lotSubject(lot, stretch.start), text));
  });
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
function horizon(context: AuditContext): Violation[] {
  const { start, end } = context.problem.horizon;
  return context.plan.segments
    .filter((segment) => segment.start < start || segment.end > end)
    .map((segment) => {
      const orderId = segment.kind === "change" ? null : segment.orderId;
      const text = `Line ${segment.lineId} has a ${segment.kind} from ${sayInstant(context.problem, segment.start)} for ${sayDuration(segment.end - segment.start)}; the plan covers ${sayDuration(end - start)}.`;
      return finding("outside-horizon", { lineId: segment.lineId, orderId, at: segment.start }, text);
    });
}

/** Rule 4: runs lie in the line's working time and last as long as their pieces need, with warm-up where it is due. */
export function runs(context: AuditContext): Violation[] {
  const ofLots = context.lots.flatMap((lot) => {
    const line = context.lines.get(lot.lineId) as ProblemLine;
    const option = context.optionOf(lot.orderId, lot.lineId, lot.setupId);
    return [
      ...lotForm(context, lot),
      ...openHours(context, line, lot),
      ...warmUps(context, line, lot),
      ...(option === null ? [] : rate(option, lot)),
    ];
  });
  return [...horizon(context), ...ofLots, ...orphans(context.orphanStops)];
}
