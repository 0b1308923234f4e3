import type { CompiledProblem } from "../problem/compiled-problem.ts";
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

function changeSegments(problem: CompiledProblem, { log }: Decoder): ChangeSegment[] {
  return Array.from({ length: log.count }, (_, row) => changeSegment(problem, log, row));
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

/** A lot that runs: dense index, and its number within its order. */
interface RunningLot {
  readonly lot: number;
  readonly number: number;
}

/** Lots of a job that run, numbered in the order of their starts; one with an exact start comes first. */
function runningLots({ lots }: CompiledProblem, decoder: Decoder, job: number): RunningLot[] {
  const running: number[] = [];
  for (let lot = lots.firstLot[job]!; lot < lots.firstLot[job + 1]!; lot++)
    if (decoder.option[lot]! >= 0) running.push(lot);
  const keyOf = (lot: number): number => (lots.fixedStart[lot]! >= 0 ? -1 : decoder.start[lot]!);
  return running.sort((a, b) => keyOf(a) - keyOf(b) || a - b).map((lot, number) => ({ lot, number }));
}

function runSegments(problem: CompiledProblem, decoder: Decoder, { lot, number }: RunningLot): Segment[] {
  const { data, origin, options } = problem;
  const option = decoder.option[lot]!;
  const line = options.line[option]!;
  const record = data.jobs[options.job[option]!]!;
  const pieces = decoder.piecesOf(lot);
  const lineId = data.lines[line]!.id;
  const secondsPerPiece = options.secondsPerPiece[option]!;
  const mould = mouldCopyOf(problem, decoder.copy[lot]!);
  const segments: Segment[] = [];
  let worked = 0;
  let made = 0;
  const stop = (reason: StopSegment["reason"], from: number, to: number): void => {
    if (to > from) {
      segments.push({
        kind: "stop",
        lineId,
        start: origin + from,
        end: origin + to,
        reason,
        orderId: record.orderId,
        lot: number,
      });
    }
  };
  const service = decoder.service[lot]!;
  if (service >= 0) stop("service", service, service + problem.moulds.serviceSeconds[decoder.copy[lot]!]!);
  const parts: readonly Stretch[] = decoder.stretches[lot]!;
  parts.forEach((part, i) => {
    const before = parts[i - 1];
    if (before !== undefined) {
      for (const pause of pauseParts(problem, line, [before.to, part.from]))
        stop(pause.reason, pause.from, pause.to);
    }
    stop("warm-up", part.from, part.from + part.warmUp);
    const from = part.from + part.warmUp;
    if (part.to === from && parts.length > 1) return;
    worked += part.to - from;
    const total =
      i === parts.length - 1 ? pieces : Math.min(pieces, Math.floor(worked / secondsPerPiece + 1e-9));
    const run: RunSegment = {
      kind: "run",
      lineId,
      start: origin + from,
      end: origin + part.to,
      orderId: record.orderId,
      lot: number,
      productId: record.productId,
      setupId: data.setups[options.setup[option]!]!.id,
      mould,
      pieces: total - made,
    };
    made = total;
    segments.push(run);
  });
  return segments;
}

function turnOf(decoder: Decoder, lot: number): Pick<PlannedLot, "turn"> {
  const turn = TURN_NAMES[decoder.turnOf(lot)] ?? null;
  return turn === null ? {} : { turn };
}

/** The plan that a decoder timed last, in ids and epoch seconds. The decoder must keep stretches. */
export function buildPlan(
  problem: CompiledProblem,
  decoder: Decoder,
  unplanned: readonly UnplannedOrder[],
): Plan {
  const { data, origin } = problem;
  const segments: Segment[] = changeSegments(problem, decoder);
  const lots: PlannedLot[] = [];
  data.jobs.forEach((job, j) => {
    for (const running of runningLots(problem, decoder, j)) {
      const { lot, number } = running;
      const option = decoder.option[lot]!;
      segments.push(...runSegments(problem, decoder, running));
      lots.push({
        orderId: job.orderId,
        lot: number,
        lineId: data.lines[problem.options.line[option]!]!.id,
        setupId: data.setups[problem.options.setup[option]!]!.id,
        pieces: decoder.piecesOf(lot),
        start: origin + decoder.start[lot]!,
        end: origin + decoder.end[lot]!,
        finish: origin + decoder.end[lot]! + job.conditioningSeconds,
        ...turnOf(decoder, lot),
      });
    }
  });
  const lineIndex = new Map(data.lines.map((line, l) => [line.id, l]));
  const order = new Map(segments.map((segment, i) => [segment, i]));
  segments.sort(
    (a, b) =>
      lineIndex.get(a.lineId)! - lineIndex.get(b.lineId)! ||
      a.start - b.start ||
      a.end - b.end ||
      order.get(a)! - order.get(b)!,
  );
  lots.sort((a, b) => (a.orderId < b.orderId ? -1 : a.orderId > b.orderId ? 1 : a.lot - b.lot));
  return { segments, lots, unplanned, objective: breakdownOf(decoder.sums, data.objective) };
}
