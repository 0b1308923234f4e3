import { exactLog } from "../chance/exact-log.ts";
import { addWork, NEVER, nextOpen } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { emptySequences, insertOption, type Sequences } from "../timing/sequences.ts";
import type { Work } from "../work/work.ts";

/** How the dispatch rule weighs slack, change time and idle waiting: the look-ahead factors of the rule. */
export interface DispatchFactors {
  /** larger: less urgency, more heed to weight and run time */
  readonly slack: number;
  /** larger: less heed to change time */
  readonly change: number;
}

interface Board {
  readonly problem: CompiledProblem;
  readonly sequences: Sequences;
  readonly free: Int32Array;
  readonly setup: Int32Array;
  /** [copy] s from which it is free, line that used it last */
  readonly copyFree: Int32Array;
  readonly copyLine: Int32Array;
  readonly done: Uint8Array;
  /** [line] options still open */
  readonly open: number[][];
  /** [line] pinned options in their order: sequence first, then fixed starts */
  readonly pinned: number[][];
}

/** Earliest instant at which the mould could be mounted on the line, and the copy. */
function mouldReady(board: Board, line: number, mould: number): { copy: number; at: number } {
  const { firstCopy, carrying } = board.problem.moulds;
  let copy = -1;
  let at = NEVER;
  for (let c = firstCopy[mould]!; c < firstCopy[mould + 1]!; c++) {
    const here = board.copyLine[c]! === line || board.copyLine[c]! < 0;
    const ready = board.copyFree[c]! + (here ? 0 : carrying[mould]!);
    if (ready < at) {
      at = ready;
      copy = c;
    }
  }
  return { copy, at };
}

interface Estimate {
  readonly changeSeconds: number;
  readonly start: number;
  readonly end: number;
  readonly copy: number;
}

function estimate(board: Board, option: number): Estimate | null {
  const { problem } = board;
  const { options, lines, changes, setups, jobs } = problem;
  const line = options.line[option]!;
  const setup = options.setup[option]!;
  const from = board.setup[line]!;
  const spec =
    from < 0
      ? -1
      : changes.matrix[(lines.changeClass[line]! * changes.setupCount + from) * changes.setupCount + setup]!;
  const mould = setups.mould[setup]!;
  const ready = mould < 0 ? { copy: -1, at: 0 } : mouldReady(board, line, mould);
  if (ready.at >= NEVER) return null;
  const job = options.job[option]!;
  const opens = options.availableFrom[option]!;
  const wanted = Math.max(jobs.release[job]!, jobs.fixedStart[job]!, opens);
  let at = Math.max(board.free[line]!, ready.at, opens);
  if (problem.changeAwaitsEarliestStart) at = Math.max(at, wanted);
  if (spec >= 0) {
    const work = changes.teamWork[spec]!;
    if (work > 0) at = addWork(problem.anyTeam, nextOpen(problem.anyTeam, at), work);
    at = addWork(lines.calendar[line]!, at, changes.tail[spec]!);
  }
  const calendar = lines.runCalendar[line]!;
  const start = nextOpen(calendar, Math.max(at, wanted));
  const end = addWork(calendar, start, options.seconds[option]!);
  return end >= NEVER || start > jobs.latestStart[job]!
    ? null
    : { changeSeconds: spec < 0 ? 0 : changes.total[spec]!, start, end, copy: ready.copy };
}

function place(board: Board, option: number, times: Estimate | null): void {
  const { options } = board.problem;
  const line = options.line[option]!;
  insertOption(board.sequences, line, board.sequences.length[line]!, option);
  board.done[options.job[option]!] = 1;
  if (times === null) return;
  board.free[line] = times.end;
  board.setup[line] = options.setup[option]!;
  if (times.copy >= 0) {
    board.copyFree[times.copy] = times.end;
    board.copyLine[times.copy] = line;
  }
}

/** Pinned orders go on their line (the quickest, where the pin names none), sequence first, then by fixed start. */
function pinnedOptions(problem: CompiledProblem): number[][] {
  const { jobs, lots, options, lines } = problem;
  const pinned: number[][] = Array.from({ length: lines.count }, () => []);
  for (let job = 0; job < jobs.count; job++) {
    if (jobs.rank[job]! < 0 && jobs.fixedStart[job]! < 0) continue;
    let best = -1;
    const whole = lots.firstLot[job]!;
    for (let option = lots.firstOption[whole]!; option < lots.firstOption[whole + 1]!; option++) {
      if (best < 0 || options.seconds[option]! < options.seconds[best]!) best = option;
    }
    if (best >= 0) pinned[options.line[best]!]!.push(best);
  }
  const rankOf = (option: number): number => {
    const rank = jobs.rank[options.job[option]!]!;
    return rank < 0 ? NEVER : rank;
  };
  const startOf = (option: number): number => jobs.fixedStart[options.job[option]!]!;
  for (const row of pinned) row.sort((a, b) => rankOf(a) - rankOf(b) || startOf(a) - startOf(b) || a - b);
  return pinned;
}

function createBoard(problem: CompiledProblem): Board {
  const { lines, moulds, jobs, lots, options } = problem;
  const pinned = pinnedOptions(problem);
  const held = new Set(pinned.flat().map((option) => options.job[option]!));
  const open: number[][] = Array.from({ length: lines.count }, () => []);
  for (let option = 0; option < options.count; option++) {
    const job = options.job[option]!;
    if (options.lot[option] !== lots.firstLot[job] || held.has(job)) continue;
    open[options.line[option]!]!.push(option);
  }
  const copyFree = new Int32Array(moulds.copyCount);
  const copyLine = new Int32Array(moulds.copyCount).fill(-1);
  for (let line = 0; line < lines.count; line++) {
    const copy = lines.initialCopy[line]!;
    if (copy < 0) continue;
    copyLine[copy] = line;
    copyFree[copy] = Math.min(NEVER, lines.freeAt[line]!);
  }
  return {
    problem,
    sequences: emptySequences(problem),
    free: Int32Array.from(lines.freeAt),
    setup: Int32Array.from(lines.initialSetup),
    copyFree,
    copyLine,
    done: new Uint8Array(jobs.count),
    open,
    pinned,
  };
}

function meanOf(values: Int32Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return values.length === 0 ? 1 : Math.max(1, sum / values.length);
}

/** -ln of run time ÷ weight and the quickest run of each job: the parts of the index that never change. */
function fixedParts(problem: CompiledProblem): {
  readonly logs: Float64Array;
  readonly quickest: Int32Array;
} {
  const { jobs, options } = problem;
  const quickest = new Int32Array(jobs.count).fill(NEVER);
  const logs = new Float64Array(options.count);
  for (let option = 0; option < options.count; option++) {
    const job = options.job[option]!;
    quickest[job] = Math.min(quickest[job]!, options.seconds[option]!);
    logs[option] = exactLog(Math.max(1e-9, jobs.weight[job]!) / Math.max(1, options.seconds[option]!));
  }
  return { logs, quickest };
}

/**
 * One pass of a dispatch rule with setups: the line that is free first takes the order with the best index. The index is
 * that of Lee, Bhaskaran and Pinedo 1997 (apparent tardiness cost with setups, from memory), taken as its logarithm:
 * ln(w ÷ p) - slack ÷ (k1 p̄) - change ÷ (k2 s̄), less idle waiting ÷ p̄ and the time lost against the order's quickest line.
 * Always ends; places every order, whole, that could end within the horizon by its estimate.
 * O(orders × options per line).
 */
export function* dispatch(problem: CompiledProblem, factors: DispatchFactors): Work<Sequences> {
  const board = createBoard(problem);
  yield;
  const { jobs, options, lines } = problem;
  const { logs, quickest } = fixedParts(problem);
  const meanRun = meanOf(options.seconds);
  const meanChange = meanOf(problem.changes.total);
  for (;;) {
    yield;
    let line = -1;
    for (let l = 0; l < lines.count; l++) {
      if (board.open[l]!.length + board.pinned[l]!.length === 0) continue;
      if (line < 0 || board.free[l]! < board.free[line]!) line = l;
    }
    if (line < 0) return board.sequences;
    const pin = board.pinned[line]![0];
    const pinJob = pin === undefined ? -1 : options.job[pin]!;
    const latestEnd = pin === undefined ? NEVER : jobs.fixedStart[pinJob]!;
    let best = -1;
    let bestIndex = -Infinity;
    let bestTimes: Estimate | null = null;
    if (pin === undefined || jobs.rank[pinJob]! < 0) {
      const kept: number[] = [];
      for (const option of board.open[line]!) {
        const job = options.job[option]!;
        if (board.done[job] === 1) continue;
        const times = estimate(board, option);
        if (times === null) continue;
        kept.push(option);
        if (times.end + meanChange > latestEnd) continue;
        const slack = Math.max(0, jobs.due[job]! - times.end);
        const index =
          logs[option]! -
          slack / (factors.slack * meanRun) -
          times.changeSeconds / (factors.change * meanChange) -
          (times.start - board.free[line]! - times.changeSeconds) / meanRun -
          (options.seconds[option]! / Math.max(1, quickest[job]!) - 1) * 2;
        if (index > bestIndex) {
          best = option;
          bestIndex = index;
          bestTimes = times;
        }
      }
      board.open[line] = kept;
    }
    if (best >= 0) place(board, best, bestTimes);
    else if (pin !== undefined) {
      board.pinned[line]!.shift();
      place(board, pin, estimate(board, pin));
    } else board.open[line] = [];
  }
}
