import { compileJobs } from "./compile-jobs.ts";
import type { CompiledJobs, CompiledLots, CompiledOptions, CompiledProblem } from "./compiled-problem.ts";
import type { Job } from "./problem-data.ts";

function joined(a: Int32Array, b: Int32Array, add = 0): Int32Array {
  const both = new Int32Array(a.length + b.length);
  both.set(a);
  for (let i = 0; i < b.length; i++) both[a.length + i] = b[i]! + add;
  return both;
}

function joinedFloats(a: Float64Array, b: Float64Array): Float64Array {
  const both = new Float64Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

/** Joins "first of each" columns: their last entry is where the next begins. */
function joinedFirsts(a: Int32Array, b: Int32Array): Int32Array {
  return joined(a, b.subarray(1), a[a.length - 1]);
}

/** The jobs' sheets where the last job may make a supply short that was enough before. */
export function sheetsOf(
  { data, sheets }: Pick<CompiledProblem, "data" | "sheets">,
  jobs: CompiledJobs,
  lots: CompiledLots,
): Int32Array {
  const { sheetId } = data.jobs.at(-1)!;
  const sheet = data.sheets.findIndex(({ id }) => id === sheetId);
  if (sheet < 0 || data.sheets[sheet]!.stockKg === null) return jobs.sheet;
  const users = data.jobs.flatMap((job, j) => (job.sheetId === sheetId ? [j] : []));
  // each lot is rounded up by itself
  const demand = users.reduce(
    (sum, j) => sum + jobs.grams[j]! + lots.firstLot[j + 1]! - lots.firstLot[j]! - 1,
    0,
  );
  const column = jobs.sheet.slice();
  for (const j of users) column[j] = sheets.grams[sheet]![0]! >= demand ? -1 : sheet;
  return column;
}

/** What `compileJobs` makes of a problem's jobs and one more behind them, from what it made of those there are. The job has no pin. */
export function appendJob(
  problem: CompiledProblem,
  job: Job,
): { readonly jobs: CompiledJobs; readonly lots: CompiledLots; readonly options: CompiledOptions } {
  const own = compileJobs({ ...problem.data, jobs: [job], pins: [] });
  const lots: CompiledLots = {
    count: problem.lots.count + own.lots.count,
    job: joined(problem.lots.job, own.lots.job, problem.jobs.count),
    firstLot: joinedFirsts(problem.lots.firstLot, own.lots.firstLot),
    firstOption: joinedFirsts(problem.lots.firstOption, own.lots.firstOption),
    fixedStart: joined(problem.lots.fixedStart, own.lots.fixedStart),
    leastPieces: joinedFloats(problem.lots.leastPieces, own.lots.leastPieces),
    unitPieces: joinedFloats(problem.lots.unitPieces, own.lots.unitPieces),
  };
  const options: CompiledOptions = {
    count: problem.options.count + own.options.count,
    job: joined(problem.options.job, own.options.job, problem.jobs.count),
    lot: joined(problem.options.lot, own.options.lot, problem.lots.count),
    line: joined(problem.options.line, own.options.line),
    setup: joined(problem.options.setup, own.options.setup),
    seconds: joined(problem.options.seconds, own.options.seconds),
    secondsPerPiece: joinedFloats(problem.options.secondsPerPiece, own.options.secondsPerPiece),
    piecesPerCycle: joinedFloats(problem.options.piecesPerCycle, own.options.piecesPerCycle),
    availableFrom: joined(problem.options.availableFrom, own.options.availableFrom),
  };
  const jobs: CompiledJobs = {
    count: problem.jobs.count + 1,
    due: joinedFloats(problem.jobs.due, own.jobs.due),
    release: joined(problem.jobs.release, own.jobs.release),
    latestStart: joined(problem.jobs.latestStart, own.jobs.latestStart),
    weight: joinedFloats(problem.jobs.weight, own.jobs.weight),
    holdingWeight: joinedFloats(problem.jobs.holdingWeight, own.jobs.holdingWeight),
    earlyPerSecond: joinedFloats(problem.jobs.earlyPerSecond, own.jobs.earlyPerSecond),
    publishedLines: [...problem.jobs.publishedLines, ...own.jobs.publishedLines],
    publishedStart: joined(problem.jobs.publishedStart, own.jobs.publishedStart),
    latePerSecond: joinedFloats(problem.jobs.latePerSecond, own.jobs.latePerSecond),
    lateOnce: joinedFloats(problem.jobs.lateOnce, own.jobs.lateOnce),
    unplanned: joinedFloats(problem.jobs.unplanned, own.jobs.unplanned),
    sheet: joined(problem.jobs.sheet, own.jobs.sheet),
    grams: joinedFloats(problem.jobs.grams, own.jobs.grams),
    gramsPerPiece: joinedFloats(problem.jobs.gramsPerPiece, own.jobs.gramsPerPiece),
    pieces: joinedFloats(problem.jobs.pieces, own.jobs.pieces),
    fixedStart: joined(problem.jobs.fixedStart, own.jobs.fixedStart),
    rank: joined(problem.jobs.rank, own.jobs.rank),
    firstOption: joinedFirsts(problem.jobs.firstOption, own.jobs.firstOption),
  };
  const widened = { ...problem, data: { ...problem.data, jobs: [...problem.data.jobs, job] } };
  return { jobs: { ...jobs, sheet: sheetsOf(widened, jobs, lots) }, lots, options };
}
