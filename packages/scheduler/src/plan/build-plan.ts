import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Job } from "../problem/problem-data.ts";
import { nextOpen, spellAt } from "../problem/calendar.ts";
import type { ChangeLog } from "../timing/change-log.ts";
import type { Decoder } from "../timing/decoder.ts";
import type { Stretch } from "../timing/run-timing.ts";
import { TURN_NAMES } from "../timing/turns.ts";
import { breakdownOf } from "./breakdown.ts";
import type {
  ChangeSegment,
  MouldCopy,
  Plan,
  PlannedLot,
  RunSegment,
  Segment,
  StopSegment,
  UnplannedOrder,
} from "./plan.ts";

/** A copy by its mould and number; null for none. */
export function mouldCopyOf(problem: CompiledProblem, copy: number): MouldCopy | null {
  if (copy < 0) return null;
  const mould = problem.moulds.mouldOfCopy[copy]!;
  return { mouldId: problem.data.moulds[mould]!.id, copy: copy - problem.moulds.firstCopy[mould]! };
}

/** One row of the log of changes, in ids and epoch seconds. */
export function changeSegment(problem: CompiledProblem, log: ChangeLog, row: number): ChangeSegment {
  const { data, origin } = problem;
  return {
    kind: "change",
    lineId: data.lines[log.line[row]!]!.id,
    start: origin + log.start[row]!,
    end: origin + log.end[row]!,
    fromSetupId: data.setups[log.from[row]!]?.id ?? null,
    toSetupId: data.setups[log.to[row]!]!.id,
    changeSpec: log.spec[row]!,
    stripping: log.stripping[row] === 1,
    teamId: data.teams[log.team[row]!]?.id ?? null,
    trolleyId: data.trolleys[log.trolley[row]!]?.id ?? null,
    mountStart: origin + log.mountStart[row]!,
    tailStart: origin + log.tailStart[row]!,
    mouldOut: mouldCopyOf(problem, log.copyOut[row]!),
    mouldIn: mouldCopyOf(problem, log.copyIn[row]!),
  };
}

/** The parts of a pause [from, to): closed time of the line, and open time in which heads are short. */
function pauseParts(
  problem: CompiledProblem,
  line: number,
  span: readonly [from: number, to: number],
): { readonly reason: StopSegment["reason"]; readonly from: number; readonly to: number }[] {
  const calendar = problem.lines.calendar[line]!;
  const parts: { reason: StopSegment["reason"]; from: number; to: number }[] = [];
  for (let from = span[0]; from < span[1];) {
    const open = nextOpen(calendar, from);
    const to = Math.min(span[1], open > from ? open : calendar.ends[spellAt(calendar, from)]!);
    parts.push({ reason: open > from ? "closed" : "operators", from, to });
    from = to;
  }
  return parts;
}

/** [lot] its number within its order, in the order of starts; one with an exact start comes first. Of lots that run. */
function lotNumbers({ lots, jobs }: CompiledProblem, { option, start }: Decoder): Int32Array {
  const numbers = new Int32Array(lots.count);
  const keyOf = (lot: number): number => (lots.fixedStart[lot]! >= 0 ? -1 : start[lot]!);
  for (let job = 0; job < jobs.count; job++) {
    const first = lots.firstLot[job]!;
    const end = lots.firstLot[job + 1]!;
    // most orders are one lot, number 0
    if (end - first === 1) continue;
    const running: number[] = [];
    for (let lot = first; lot < end; lot++) if (option[lot]! >= 0) running.push(lot);
    running.sort((a, b) => keyOf(a) - keyOf(b) || a - b);
    for (let number = 0; number < running.length; number++) numbers[running[number]!] = number;
  }
  return numbers;
}

/** Lots that run, in the order of their starts. */
function lotsByStart({ option, start }: Decoder): number[] {
  const lots = option.length;
  const keys = new Float64Array(lots);
  let count = 0;
  for (let lot = 0; lot < lots; lot++) if (option[lot]! >= 0) keys[count++] = start[lot]! * lots + lot;
  return Array.from(keys.subarray(0, count).sort(), (key) => key % lots);
}

/** A lot that runs, as its segments are written. */
interface RunningLot {
  readonly lot: number;
  /** Within its order. */
  readonly number: number;
  readonly job: Job;
  readonly line: number;
  readonly lineId: string;
}

/** Writes a stop of the lot from one instant to another, s after the horizon's start; none where it has no length. */
function writeStop(
  segments: Segment[],
  { number, job, lineId }: RunningLot,
  reason: StopSegment["reason"],
  span: readonly [start: number, end: number],
): void {
  const [start, end] = span;
  if (end <= start) return;
  segments.push({ kind: "stop", lineId, start, end, reason, orderId: job.orderId, lot: number });
}

function writeRun(
  problem: CompiledProblem,
  decoder: Decoder,
  running: RunningLot,
  segments: Segment[],
): void {
  const { data, origin, options } = problem;
  const { lot, number, job, line, lineId } = running;
  const option = decoder.option[lot]!;
  const pieces = decoder.piecesOf(lot);
  const secondsPerPiece = options.secondsPerPiece[option]!;
  const setupId = data.setups[options.setup[option]!]!.id;
  const mould = mouldCopyOf(problem, decoder.copy[lot]!);
  const service = decoder.service[lot]!;
  if (service >= 0) {
    const start = origin + service;
    writeStop(segments, running, "service", [
      start,
      start + problem.moulds.serviceSeconds[decoder.copy[lot]!]!,
    ]);
  }
  const parts: readonly Stretch[] = decoder.stretches[lot]!;
  const last = parts.length - 1;
  let worked = 0;
  let made = 0;
  for (let i = 0; i <= last; i++) {
    const part = parts[i]!;
    if (i > 0) {
      for (const pause of pauseParts(problem, line, [parts[i - 1]!.to, part.from]))
        writeStop(segments, running, pause.reason, [origin + pause.from, origin + pause.to]);
    }
    const from = part.from + part.warmUp;
    if (part.warmUp > 0) writeStop(segments, running, "warm-up", [origin + part.from, origin + from]);
    if (part.to === from && last > 0) continue;
    worked += part.to - from;
    const total = i === last ? pieces : Math.min(pieces, Math.floor(worked / secondsPerPiece + 1e-9));
    const run: RunSegment = {
      kind: "run",
      lineId,
      start: origin + from,
      end: origin + part.to,
      orderId: job.orderId,
      lot: number,
      productId: job.productId,
      setupId,
      mould,
      pieces: total - made,
    };
    made = total;
    segments.push(run);
  }
}

function plannedLot(problem: CompiledProblem, decoder: Decoder, running: RunningLot): PlannedLot {
  const { data, origin, options } = problem;
  const { lot, number, job, lineId } = running;
  const planned: PlannedLot = {
    orderId: job.orderId,
    lot: number,
    lineId,
    setupId: data.setups[options.setup[decoder.option[lot]!]!]!.id,
    pieces: decoder.piecesOf(lot),
    start: origin + decoder.start[lot]!,
    end: origin + decoder.end[lot]!,
    finish: origin + decoder.end[lot]! + job.conditioningSeconds,
  };
  const turn = TURN_NAMES[decoder.turnOf(lot)] ?? null;
  return turn === null ? planned : { ...planned, turn };
}

function compareSegments(a: Segment, b: Segment): number {
  return a.start - b.start || a.end - b.end;
}

function compareLots(a: PlannedLot, b: PlannedLot): number {
  return a.orderId < b.orderId ? -1 : a.orderId > b.orderId ? 1 : a.lot - b.lot;
}

/** The plan that a decoder timed last, in ids and epoch seconds. The decoder must keep stretches. */
export function buildPlan(
  problem: CompiledProblem,
  decoder: Decoder,
  unplanned: readonly UnplannedOrder[],
): Plan {
  const { data, options } = problem;
  const { log } = decoder;
  const segmentsOf = data.lines.map((): Segment[] => []);
  for (let row = 0; row < log.count; row++)
    segmentsOf[log.line[row]!]!.push(changeSegment(problem, log, row));
  const numbers = lotNumbers(problem, decoder);
  const lots: PlannedLot[] = [];
  for (const lot of lotsByStart(decoder)) {
    const option = decoder.option[lot]!;
    const line = options.line[option]!;
    const job = data.jobs[options.job[option]!]!;
    const running = { lot, number: numbers[lot]!, job, line, lineId: data.lines[line]!.id };
    writeRun(problem, decoder, running, segmentsOf[line]!);
    lots.push(plannedLot(problem, decoder, running));
  }
  // changes, then runs, each in order of start already: little is left to sort on a line
  const segments = segmentsOf.flatMap((onLine) => onLine.sort(compareSegments));
  lots.sort(compareLots);
  return { segments, lots, unplanned, objective: breakdownOf(decoder.sums, data.objective) };
}
