import type { WorkingTime } from "@formweek/capacity-model";

/**
 * What the scheduler is given: plain, immutable, id-based records, already worked out by the capacity model (rates, fit,
 * changeovers, quantities, calendars). The published special cases are the same records with parts left empty.
 *
 * All instants are integer seconds since the epoch, UTC; all durations integer seconds; spells are half-open [start, end).
 *
 * Timing rules, as the decoder keeps them and the audit checks them:
 * - Everything on a line starts at or after the line's `freeAt` and the horizon's start and ends by the horizon's end.
 * - A line does one thing at a time. A run uses the line's working time, stops at closed time and goes on after it. Where
 *   operators are short it stops too. A restart after a stop (wall clock) longer than `restartLimitSeconds` first spends
 *   `restartWarmUpSeconds` of working time without pieces. Stops are pauses inside a lot: closed and operator pauses back
 *   to back are one stop, and a lot's first stretch needs no warm-up. A warm-up pauses as a run does; a pause longer than
 *   the limit starts it anew, a shorter one lets it go on. The segments of a lot follow one another without a gap, from
 *   a run stretch to a run stretch. Where a line is closed and operators are short, the reason is "closed".
 * - After stretches of R seconds of running in all, a lot has floor((R + 1e-9) / secondsPerPiece) pieces; the last stretch
 *   makes up the lot.
 * - A line needs its operators while it runs and while it warms up, not while it is changed or paused.
 * - A change lies between two runs whose set-ups differ (or before the first, from `initial`). It has three phases without
 *   a pause between: dismount and mount in the working time of one team (which it occupies from its start to the end of
 *   mounting, breaks included, as it does the trolley where `usesTrolley`), then the tail (thermal work, first-piece
 *   check) in the working time of the line, without a team. A change without team work is its tail alone. It may be
 *   done before the order's earliest start, unless `changeAwaitsEarliestStart`. The run starts at or after the end of the
 *   change. Change time and team time are priced by the seconds of work in the spec (pauses between shifts not counted).
 *   It starts at an open instant of the working time it uses first (the team's, else the line's). Every phase ends at
 *   `addWorking(working time, end of the phase before, its seconds)`. A line whose `trolleyId` is null needs no trolley.
 *   Every change but a stripping one serves the next run on its line. An entry other than -1 asks for a change segment,
 *   be it of no length.
 * - A mould copy belongs to a line from the start of mounting to the end of dismounting, and needs the mould's
 *   `carryingSeconds` (wall clock) between leaving one line and the start of mounting on another. A mould that hangs on
 *   an idle line is taken by a stripping change there (dismount alone, to the set-up's `strippedId`).
 *   Where a change joins two set-ups with the same mould the copy stays, and `mouldOut` and `mouldIn` are null. On a line
 *   whose `initial` is null the first run's copy belongs to it from the start of that run. Where the matrix says "no
 *   change" between set-ups of different moulds, they swap at the run's start.
 * - In an out-of-service spell of a copy no change that mounts it (from `mountStart` to its end) and no lot made with it
 *   (start to end) may lie; a copy that only hangs on a line between may be served there.
 * - A mould with `service` is served after so many cycles (common practice, no source). A copy counts
 *   ceil(pieces / piecesPerCycle) cycles for each lot it makes, in the order of their starts, from its `cyclesDone` on. A lot
 *   that would bring the count past `afterCycles`, the count being above 0, has the copy served first and the count begins anew
 *   at 0; no other lot does. One that alone needs more than `afterCycles` runs through on a fresh copy. The service is done on
 *   the line: a stop of the lot of `seconds` wall clock, without team or operators, in closed time too, after the change that
 *   serves the lot (or the step before, where there is none) and before the run, with nothing between but waiting. Like the
 *   change it does not start before the option is available. Where moulds swap without a change, or `initial` is null, the
 *   copy belongs to the line from the start of the service. A service may lie in an out-of-service spell of the copy.
 * - A run starts at or after the order's earliest start, and not before the supply of its sheet covers all runs of
 *   that sheet that have started by then, its own kilograms included. A run is a whole lot here, with all its kilograms
 *   from its start; start-up scrap is not counted.
 * - No lot of an order starts after the order's latest start (its sheet ages on the shelf; common practice, no source). A lot
 *   that has started by then may run on past it.
 * - An order's finish is the end of its last run plus conditioning (wall clock). Its lots add up to its pieces exactly.
 * - An order with `lots` may be made in several lots, on one line or several, side by side or not. Each has `leastPieces` or
 *   more, and all but one are a multiple of `unitPieces`. An order is planned with all its lots or not at all.
 */
export interface ProblemData {
  readonly horizon: { readonly start: number; readonly end: number };
  readonly lines: readonly ProblemLine[];
  readonly moulds: readonly ProblemMould[];
  readonly setups: readonly SetupState[];
  readonly changeClasses: readonly ChangeClass[];
  readonly changes: readonly ChangeSpec[];
  readonly teams: readonly ProblemTeam[];
  readonly trolleys: readonly ProblemTrolley[];
  readonly pools: readonly OperatorSupply[];
  readonly sheets: readonly SheetSupply[];
  readonly jobs: readonly Job[];
  readonly pins: readonly Pin[];
  /** True where the rules of the problem forbid a change to begin before its order's earliest start (no plant's case). */
  readonly changeAwaitsEarliestStart: boolean;
  readonly objective: ObjectiveWeights;
}

export interface ProblemLine {
  readonly id: string;
  /** Closures by the planner are already taken out. */
  readonly workingTime: WorkingTime;
  /** Id of the change class whose matrix holds for this line. */
  readonly changeClassId: string;
  readonly trolleyId: string | null;
  readonly poolId: string | null;
  /** Hundredths of a head while running; 0 where operators do not matter. */
  readonly operatorsHundredths: number;
  /** Spells of the working time that are paid as overtime; absent: none. */
  readonly overtime?: WorkingTime;
  readonly restartLimitSeconds: number;
  readonly restartWarmUpSeconds: number;
  /** Set-up and mould copy (0-based) that the line holds at the horizon's start; null set-up: needs no change for its first run. */
  readonly initial: { readonly setupId: string; readonly copy: number | null } | null;
  /** The line is free from this instant on (a run in progress ends then). */
  readonly freeAt: number;
}

export interface ProblemMould {
  readonly id: string;
  /** Number of identical copies, >= 0. */
  readonly copies: number;
  readonly carryingSeconds: number;
  /** Spells in which a copy (0-based) may not hang on a line. */
  readonly outOfService: readonly { readonly copy: number; readonly start: number; readonly end: number }[];
  /** Absent: it is never served for its cycles. */
  readonly service?: CycleService;
}

/** Service of a mould after so many cycles. */
export interface CycleService {
  /** Whole number >= 1. */
  readonly afterCycles: number;
  /** Wall clock, >= 1. */
  readonly seconds: number;
  /** [copy] cycles since the last service at the horizon's start, whole numbers >= 0; 0 for copies without an entry. */
  readonly cyclesDone: readonly number[];
}

/** State of a line: what is mounted and threaded. `mouldId` null: no mould hangs there. */
export interface SetupState {
  readonly id: string;
  readonly mouldId: string | null;
  readonly sheetId: string | null;
  /** The same state after the mould is taken out; the state itself when none hangs. */
  readonly strippedId: string;
}

/** Lines that share one change matrix. matrix[from][to] is an index into `ProblemData.changes`; -1 = no change needed. Indices follow `setups`. */
export interface ChangeClass {
  readonly id: string;
  readonly matrix: readonly (readonly number[])[];
}

/** Durations of one change; `dismountSeconds` + `mountSeconds` need a team when positive. */
export interface ChangeSpec {
  readonly dismountSeconds: number;
  readonly mountSeconds: number;
  readonly tailSeconds: number;
  readonly usesTrolley: boolean;
  readonly scrapKg: number;
}

export interface ProblemTeam {
  readonly id: string;
  readonly workingTime: WorkingTime;
}

/** One mould travels at a time on each trolley. */
export interface ProblemTrolley {
  readonly id: string;
}

/** Heads over time: at any instant the sum of the crews whose working time is open. */
export interface OperatorSupply {
  readonly id: string;
  readonly crews: readonly { readonly workingTime: WorkingTime; readonly hundredths: number }[];
}

/** Kilograms on hand at the horizon's start and arriving later; null stock: never short. */
export interface SheetSupply {
  readonly id: string;
  readonly stockKg: number | null;
  readonly arrivals: readonly { readonly at: number; readonly kg: number }[];
}

/** What is left to make of one order. */
export interface Job {
  readonly orderId: string;
  readonly productId: string;
  /** Pieces to form, scrap allowance and rounding included; >= 1. */
  readonly pieces: number;
  readonly dueAt: number;
  readonly earliestStartAt: number;
  /** None of its lots starts after this instant, such as the use-by of its sheet; absent: no such limit. It may lie in the past. */
  readonly latestStartAt?: number;
  readonly weight: number;
  /** What its goods take up while they wait for their due date, such as pallets; absent: nothing. */
  readonly holdingWeight?: number;
  /** The lines that the published plan has it on, at least one, and when it begins there; absent: it is not in it. */
  readonly published?: { readonly lineIds: readonly string[]; readonly startAt: number };
  readonly conditioningSeconds: number;
  readonly sheetId: string | null;
  /** Sheet used per piece formed, kg. */
  readonly sheetKgPerPiece: number;
  /** How it may be split; absent: it is made in one lot. */
  readonly lots?: SplitRule;
  /** What its lots would have to be if it might be split, for an order that may not; absent: any pieces. */
  readonly lotSize?: LotSize;
  /** Every line × mould that may make it; empty: unplanned, with `refusals`. */
  readonly options: readonly JobOption[];
  /** Why the other lines and moulds may not, from the fit check; carried into the plan's reasons. */
  readonly refusals: readonly OptionRefusal[];
}

/** How large lots are. Whole numbers >= 1. */
export interface LotSize {
  /** Of every lot. */
  readonly leastPieces: number;
  /** All lots but one are a multiple of it: what is packed together. */
  readonly unitPieces: number;
}

/** Bounds of a split. `most` is a whole number >= 1, `leastPieces` no more than the order's pieces. The engine may make fewer lots. */
export interface SplitRule extends LotSize {
  readonly most: number;
}

export interface JobOption {
  readonly lineId: string;
  readonly setupId: string;
  /** Working seconds per piece formed; a lot of n pieces runs ceil(n × secondsPerPiece - 1e-9) seconds. */
  readonly secondsPerPiece: number;
  /** Pieces that one cycle of the mould forms, a whole number >= 1; absent: 1. */
  readonly piecesPerCycle?: number;
  /** Neither the run nor the change that serves it starts before this instant (the mould is still on its way); absent: no such limit. */
  readonly availableFromAt?: number;
}

export interface OptionRefusal {
  readonly lineId: string;
  readonly mouldId: string;
  readonly code: string;
  readonly text: string;
  /** Absent where a rate, not a check, stands against it. */
  readonly compared?: Compared;
}

/** The two sides of a fit check: a figure against a limit, or a name (an id for an approval) against those there are. */
export type Compared =
  | { readonly needed: number; readonly has: number; readonly unit: string }
  | { readonly needed: string; readonly has: readonly string[] };

/**
 * The planner's word for one order: a line, a start, or both; pinned orders of one line that carry `sequence` run in
 * that order before every other run of the line. A fixed start is exact, and is that of the order's lot 0; a line holds
 * for every lot. A sequence without a line counts on the line where the order is planned. Pinned orders listed as
 * unplanned break no pin.
 */
export interface Pin {
  readonly orderId: string;
  readonly lineId: string | null;
  readonly startAt: number | null;
  readonly sequence: number | null;
}

/** Money per unit of each term; all >= 0. */
export interface ObjectiveWeights {
  /** per weight × hour late */
  readonly tardinessPerWeightHour: number;
  /** per weight of a late order */
  readonly lateOrderPerWeight: number;
  /** per hour that a line stands in a change: seconds of all three phases, closed time and breaks between not counted; stripping too */
  readonly changePerMachineHour: number;
  /** per hour of team work */
  readonly changePerTeamHour: number;
  /** per kg of start-up scrap */
  readonly scrapPerKg: number;
  /** per hour of a line's overtime spent on running, warming up or a change (pauses between the phases of a change too) */
  readonly overtimePerHour: number;
  /** per holding weight × hour between an order's finish and its due date */
  readonly earlinessPerWeightHour: number;
  /** per hour by which the line with the most running and change work exceeds the mean of all lines */
  readonly balancePerHour: number;
  /** per order that has a lot on a line on which the published plan has none of it */
  readonly movedLinePerOrder: number;
  /** per hour between an order's first start and that of the published plan, earlier or later */
  readonly movedStartPerHour: number;
  /** per weight of an unplanned order; should exceed what lateness over the horizon costs */
  readonly unplannedPerWeight: number;
  /** per hour from the horizon's start to the end of the last run (0 without runs); 0 in plants, positive for the makespan sets */
  readonly makespanPerHour: number;
}
