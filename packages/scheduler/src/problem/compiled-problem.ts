import type { Calendar } from "./calendar.ts";
import type { ProblemData } from "./problem-data.ts";

/**
 * The problem as dense indices and typed arrays. Instants are seconds after the horizon's start, durations seconds; -1 is
 * "none". A *copy* is numbered over all moulds. A job that may be split has as many *lots* as it may be made in, others have one,
 * numbered job by job; an *option* is one lot on one line in one set-up, numbered lot by lot.
 */
export interface CompiledProblem {
  readonly data: ProblemData;
  /** Epoch seconds of instant 0. */
  readonly origin: number;
  /** s; everything ends by then. */
  readonly horizon: number;
  readonly lines: CompiledLines;
  readonly setups: CompiledSetups;
  readonly changes: CompiledChanges;
  readonly moulds: CompiledMoulds;
  readonly jobs: CompiledJobs;
  readonly lots: CompiledLots;
  readonly options: CompiledOptions;
  readonly sheets: CompiledSheets;
  /** [team] setter hours. */
  readonly teams: readonly Calendar[];
  /** Hours in which at least one team works; the teams' own when there is one. */
  readonly anyTeam: Calendar;
  readonly trolleyCount: number;
  /** [pool] heads left as a step function, or null where the pool can never be short. */
  readonly pools: readonly (HeadProfile | null)[];
  readonly changeAwaitsEarliestStart: boolean;
  /** Terms of the objective that have a price and something to count. */
  readonly terms: PricedTerms;
  /** Cost per second of overtime. */
  readonly overtimePrice: number;
  /** Cost per second of the last run's end. */
  readonly makespanPrice: number;
  /** No run of one line can wait for another line: the lines may be judged one by one. */
  readonly linesAreIndependent: boolean;
}

export interface PricedTerms {
  readonly overtime: boolean;
  readonly earliness: boolean;
  readonly balance: boolean;
  /** Distance from the published plan. */
  readonly stability: boolean;
}

export interface CompiledLines {
  readonly count: number;
  /** [line] s */
  readonly freeAt: Int32Array;
  /** [line] set-up or -1: the first run needs no change */
  readonly initialSetup: Int32Array;
  /** [line] copy or -1 */
  readonly initialCopy: Int32Array;
  readonly changeClass: Int32Array;
  /** [line] trolley or -1 */
  readonly trolley: Int32Array;
  /** [line] pool or -1 when it can never be short */
  readonly pool: Int32Array;
  /** [line] hundredths of a head */
  readonly heads: Int32Array;
  /** [line] s; warm-up 0 when stops cost nothing */
  readonly restartLimit: Int32Array;
  readonly restartWarmUp: Int32Array;
  /** [line] overtime hours in which the line is open, null for none; the same in which its pool could man it alone */
  readonly overtime: readonly (Calendar | null)[];
  readonly mannedOvertime: readonly (Calendar | null)[];
  /** [line] hours in which the line is open */
  readonly calendar: readonly Calendar[];
  /** [line] hours in which it is open and its pool could man it alone */
  readonly runCalendar: readonly Calendar[];
}

export interface CompiledSetups {
  readonly count: number;
  /** [set-up] mould or -1 */
  readonly mould: Int32Array;
  /** [set-up] the state after stripping */
  readonly stripped: Int32Array;
}

export interface CompiledChanges {
  /** [class × from × to] spec or -1 */
  readonly matrix: Int32Array;
  readonly setupCount: number;
  /** [spec] s */
  readonly dismount: Int32Array;
  readonly mount: Int32Array;
  readonly tail: Int32Array;
  /** [spec] s of all three phases */
  readonly total: Int32Array;
  /** [spec] s of team work */
  readonly teamWork: Int32Array;
  /** [spec] 1 when the trolley travels */
  readonly usesTrolley: Uint8Array;
  readonly scrapKg: Float64Array;
  /** [spec] money: machine time, team time and scrap together */
  readonly cost: Float64Array;
}

export interface CompiledMoulds {
  readonly count: number;
  /** [mould + 1] first copy of each */
  readonly firstCopy: Int32Array;
  readonly carrying: Int32Array;
  readonly copyCount: number;
  /** [copy] */
  readonly mouldOfCopy: Int32Array;
  /** [copy] cycles after which it is served, Infinity for never; s that this takes; cycles done at the start */
  readonly serviceAfter: Float64Array;
  readonly serviceSeconds: Int32Array;
  readonly cyclesDone: Float64Array;
  /** [copy] spells out of service inside the horizon, sorted, disjoint; null when none */
  readonly service: readonly (readonly (readonly [number, number])[] | null)[];
}

export interface CompiledJobs {
  readonly count: number;
  /** [job] s at which the run must end to be on time: due less conditioning; may be negative */
  readonly due: Float64Array;
  /** [job] s: earliest start, or the arrival of the sheet that its least lot needs; NEVER when the sheet never comes */
  readonly release: Int32Array;
  /** [job] s after which none of its lots may start; negative before the horizon, at most NEVER - 1: NEVER is too late for any */
  readonly latestStart: Int32Array;
  readonly weight: Float64Array;
  readonly holdingWeight: Float64Array;
  /** [job] money per second early */
  readonly earlyPerSecond: Float64Array;
  /** [job] lines of the published plan, the number of lines for one that is gone; its start there, s */
  readonly publishedLines: readonly (readonly number[])[];
  readonly publishedStart: Int32Array;
  /** [job] money per second late */
  readonly latePerSecond: Float64Array;
  /** [job] money once late */
  readonly lateOnce: Float64Array;
  readonly unplanned: Float64Array;
  /** [job] sheet or -1 when its supply can never be short */
  readonly sheet: Int32Array;
  /** [job] sheet that all its pieces draw */
  readonly grams: Float64Array;
  readonly gramsPerPiece: Float64Array;
  readonly pieces: Float64Array;
  /** [job] exact start of its first lot or -1 */
  readonly fixedStart: Int32Array;
  /** [job] place in the pinned sequence of its line or -1 */
  readonly rank: Int32Array;
  /** [job + 1] first option of each, over all its lots */
  readonly firstOption: Int32Array;
}

/** The first lot of a job is always in use; the others may stay empty. */
export interface CompiledLots {
  readonly count: number;
  readonly job: Int32Array;
  /** [job + 1] first lot of each */
  readonly firstLot: Int32Array;
  /** [lot + 1] first option of each; the options of a job's lots are the same in the same order */
  readonly firstOption: Int32Array;
  /** [lot] exact start or -1 */
  readonly fixedStart: Int32Array;
  /** [job] pieces of a lot at least; all but one lot are a multiple of the unit */
  readonly leastPieces: Float64Array;
  readonly unitPieces: Float64Array;
}

export interface CompiledOptions {
  readonly count: number;
  readonly job: Int32Array;
  readonly lot: Int32Array;
  readonly line: Int32Array;
  readonly setup: Int32Array;
  /** [option] s of running all pieces of the job, at most NEVER */
  readonly seconds: Int32Array;
  readonly secondsPerPiece: Float64Array;
  readonly piecesPerCycle: Float64Array;
  /** [option] s before which neither its change nor its run starts */
  readonly availableFrom: Int32Array;
}

export interface CompiledSheets {
  readonly count: number;
  /** [sheet] instants of arrival, sorted, 0 first */
  readonly at: readonly Int32Array[];
  /** [sheet] grams there from that instant on */
  readonly grams: readonly Float64Array[];
}

/** Step function over the horizon: `free[i]` hundredths of a head from `at[i]` until `at[i + 1]`; at[0] = 0. */
export interface HeadProfile {
  readonly at: Int32Array;
  readonly free: Int32Array;
}
