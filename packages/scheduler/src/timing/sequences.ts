import { runSeconds } from "../problem/compile-jobs.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";

/** How long things take in one play of a plan, where that is not what was planned. */
export interface DrawnDurations {
  /** [lot] working seconds of its run, whatever stops it by itself included; whole */
  readonly run: Int32Array;
  /** [lot] times as long as planned that the change which serves it takes */
  readonly change: Float64Array;
  /** [line] the same of changes that only take out its mould */
  readonly stripping: Float64Array;
}

/**
 * What the search moves: which options run on each line, in which order, and how many pieces each lot has. A lot is on at most
 * one line; a job none of whose lots is on one is left over.
 */
export interface Sequences {
  /** [line][position] option; valid below `length[line]` */
  readonly at: readonly Int32Array[];
  readonly length: Int32Array;
  /** [lot] 0 where it is not in use; the lots of a job add up to its pieces */
  readonly pieces: Float64Array;
  /** [lot] how it takes its turn, a `Turn`; without meaning for lots on no line */
  readonly turn: Uint8Array;
  /**
   * Null: all lasts as planned. Else the plan is played: pinned starts are not before, but may be after, what was pinned, and latest
   * starts are let pass, since a lot that comes late is still made.
   */
  readonly drawn: DrawnDurations | null;
}

/** All jobs in one lot each: [lot] pieces. */
function wholePieces({ jobs, lots }: CompiledProblem): Float64Array {
  const pieces = new Float64Array(lots.count);
  for (let job = 0; job < jobs.count; job++) pieces[lots.firstLot[job]!] = jobs.pieces[job]!;
  return pieces;
}

/** Seconds that an option's lot runs. */
export function lotSeconds(
  { options }: CompiledProblem,
  { pieces, drawn }: Sequences,
  option: number,
): number {
  if (drawn !== null) return drawn.run[options.lot[option]!]!;
  return runSeconds(pieces[options.lot[option]!]!, options.secondsPerPiece[option]!);
}

/** No run on any line, all jobs in one lot each. */
export function emptySequences(problem: CompiledProblem): Sequences {
  const { lines, lots, options } = problem;
  const capacity = new Int32Array(lines.count);
  const seen = new Int32Array(lines.count).fill(-1);
  for (let option = 0; option < options.count; option++) {
    const line = options.line[option]!;
    if (seen[line] === options.lot[option]) continue;
    seen[line] = options.lot[option]!;
    capacity[line]!++;
  }
  return {
    at: Array.from(capacity, (size) => new Int32Array(size)),
    length: new Int32Array(lines.count),
    pieces: wholePieces(problem),
    turn: new Uint8Array(lots.count),
    drawn: null,
  };
}

/** Makes `into` equal to `from`; both of the same problem. */
export function copySequences(from: Sequences, into: Sequences): void {
  for (let line = 0; line < from.length.length; line++) copyLine(from, into, line);
  copyLots(from, into);
}

/** An equal one that shares nothing with it; as roomy. */
export function cloneSequences({ at, length, pieces, turn, drawn }: Sequences): Sequences {
  return {
    at: at.map((row) => row.slice()),
    length: length.slice(),
    pieces: pieces.slice(),
    turn: turn.slice(),
    drawn,
  };
}

/** Pieces and turns. */
export function copyLots(from: Sequences, into: Sequences): void {
  into.pieces.set(from.pieces);
  into.turn.set(from.turn);
}

export function copyLine(from: Sequences, into: Sequences, line: number): void {
  const length = from.length[line]!;
  const source = from.at[line]!;
  const target = into.at[line]!;
  for (let i = 0; i < length; i++) target[i] = source[i]!;
  into.length[line] = length;
}

/** True when a line's runs are the same in both from a position on. */
function isSameFrom(a: Sequences, b: Sequences, line: number, position: number): boolean {
  if (a.length[line] !== b.length[line]) return false;
  const one = a.at[line]!;
  const other = b.at[line]!;
  for (let p = position; p < a.length[line]!; p++) if (one[p] !== other[p]) return false;
  return true;
}

/** True when every lot has the same pieces and takes its turn alike in both. */
function hasSameLots({ jobs, lots }: CompiledProblem, a: Sequences, b: Sequences): boolean {
  for (let lot = 0; lot < lots.count; lot++) if (a.turn[lot] !== b.turn[lot]) return false;
  return lots.count === jobs.count || a.pieces.every((pieces, lot) => pieces === b.pieces[lot]);
}

/** True when plans that may differ only in lots, and on lines from `from[line]` on where that is not below 0, do not. */
export function isSameBehind(
  problem: CompiledProblem,
  a: Sequences,
  b: Sequences,
  from: Int32Array,
): boolean {
  return hasSameLots(problem, a, b) && from.every((at, line) => at < 0 || isSameFrom(a, b, line, at));
}

/** True when the same lots of the same pieces, taking their turns alike, run in the same order on every line. */
export function isSamePlan(problem: CompiledProblem, a: Sequences, b: Sequences): boolean {
  return hasSameLots(problem, a, b) && a.at.every((_, line) => isSameFrom(a, b, line, 0));
}

export function insertOption(sequences: Sequences, line: number, position: number, option: number): void {
  const row = sequences.at[line]!;
  row.copyWithin(position + 1, position, sequences.length[line]);
  row[position] = option;
  sequences.length[line]!++;
}

export function removeAt(sequences: Sequences, line: number, position: number): void {
  const row = sequences.at[line]!;
  row.copyWithin(position, position + 1, sequences.length[line]);
  sequences.length[line]!--;
}

/** Positions at which an option may stand so that pinned sequences are kept: from `first` to `last`, both included. */
export function allowedPositions(
  problem: CompiledProblem,
  sequences: Sequences,
  option: number,
): { readonly first: number; readonly last: number } {
  const { rank } = problem.jobs;
  const { job, line } = problem.options;
  const own = rank[job[option]!]!;
  const row = sequences.at[line[option]!]!;
  const length = sequences.length[line[option]!]!;
  let first = 0;
  while (first < length) {
    const other = rank[job[row[first]!]!]!;
    if (other < 0 || (own >= 0 && other > own)) break;
    first++;
  }
  return own < 0 ? { first, last: length } : { first, last: first };
}
