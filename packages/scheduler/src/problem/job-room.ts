import { sheetsOf } from "./append-job.ts";
import { termsOf, withJob } from "./compile.ts";
import { compileJobs } from "./compile-jobs.ts";
import type { CompiledJobs, CompiledOptions, CompiledProblem } from "./compiled-problem.ts";
import { MOST_LOTS } from "./lot-rule.ts";
import type { Job } from "./problem-data.ts";

type Columns<Of> = {
  [Key in keyof Of as Of[Key] extends Int32Array | Float64Array ? Key : never]: Of[Key];
};

/** One value a job, but for what has one more or is worked out from all. */
const JOB_COLUMNS: readonly Exclude<keyof Columns<CompiledJobs>, "sheet" | "firstOption">[] = [
  "due",
  "release",
  "latestStart",
  "weight",
  "holdingWeight",
  "earlyPerSecond",
  "publishedStart",
  "latePerSecond",
  "lateOnce",
  "unplanned",
  "grams",
  "gramsPerPiece",
  "pieces",
  "fixedStart",
  "rank",
];

const OPTION_COLUMNS: readonly Exclude<keyof Columns<CompiledOptions>, "job" | "lot">[] = [
  "line",
  "setup",
  "seconds",
  "secondsPerPiece",
  "piecesPerCycle",
  "availableFrom",
];

type Writable<Of> = { -readonly [Key in keyof Of]: Of[Key] };

/** A job of as many lots as there may be, and so many options each, that stands for whatever is written over it. */
function widestJob({ data }: CompiledProblem, options: number): Job {
  const option = {
    lineId: data.lines[0]?.id ?? "",
    setupId: data.setups[0]?.id ?? "",
    secondsPerPiece: 1e-9,
  };
  return {
    orderId: "",
    productId: "",
    pieces: MOST_LOTS,
    dueAt: data.horizon.end,
    earliestStartAt: data.horizon.start,
    weight: 0,
    conditioningSeconds: 0,
    sheetId: null,
    sheetKgPerPiece: 0,
    lots: { most: MOST_LOTS, leastPieces: 1, unitPieces: 1 },
    options: Array.from({ length: options }, () => option),
    refusals: [],
  };
}

/**
 * A problem with room for one job more, its last, which is written over for each that is asked for: no array is made anew. Behind the
 * job's own lots and options there may be some without meaning; those of `withJob` have the same numbers.
 */
export class JobRoom {
  readonly problem: CompiledProblem;
  private readonly before: CompiledProblem;
  private readonly mostOptions: number;

  constructor(before: CompiledProblem, mostOptions: number) {
    this.before = before;
    this.mostOptions = mostOptions;
    this.problem = { ...withJob(before, widestJob(before, mostOptions)) };
  }

  /** True when the job has no more options than there is room for. */
  fits({ options }: Job): boolean {
    return options.length <= this.mostOptions;
  }

  /** Makes a job that fits, without a pin, the last one. True when the plans of the others are timed as before: no sheet that was enough is short now. */
  write(job: Job): boolean {
    const { before } = this;
    const problem: Writable<CompiledProblem> = this.problem;
    const { jobs, lots, options } = problem;
    const own = compileJobs({ ...before.data, jobs: [job], pins: [] });
    const at = before.jobs.count;
    const lot = before.lots.count;
    const option = before.options.count;
    problem.data = { ...before.data, jobs: [...before.data.jobs, job] };
    for (const column of JOB_COLUMNS) jobs[column][at] = own.jobs[column][0]!;
    (jobs.publishedLines as (readonly number[])[])[at] = own.jobs.publishedLines[0]!;
    lots.leastPieces[at] = own.lots.leastPieces[0]!;
    lots.unitPieces[at] = own.lots.unitPieces[0]!;
    lots.firstLot[at + 1] = lot + own.lots.count;
    jobs.firstOption[at + 1] = option + own.options.count;
    for (let i = 0; i < MOST_LOTS; i++)
      lots.firstOption[lot + i + 1] = option + own.lots.firstOption[Math.min(i + 1, own.lots.count)]!;
    for (const column of OPTION_COLUMNS) options[column].set(own.options[column], option);
    for (let i = 0; i < own.options.count; i++) options.lot[option + i] = lot + own.options.lot[i]!;
    jobs.sheet.set(before.jobs.sheet);
    jobs.sheet[at] = own.jobs.sheet[0]!;
    jobs.sheet.set(sheetsOf(problem, jobs, lots));
    problem.terms = termsOf(problem.data, problem.lines, jobs);
    for (let j = 0; j < at; j++) if (jobs.sheet[j] !== before.jobs.sheet[j]) return false;
    return true;
  }
}
