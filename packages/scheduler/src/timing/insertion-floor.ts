import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { LineModel } from "./line-model.ts";
import { lotSeconds, type Sequences } from "./sequences.ts";

const NO_ROW: Int32Array = new Int32Array(0);

function byColumns({ changes: { matrix, setupCount: n } }: CompiledProblem): Int32Array {
  const columns = new Int32Array(matrix.length);
  for (let start = 0; start < matrix.length; start += n * n)
    for (let from = 0; from < n; from++)
      for (let to = 0; to < n; to++) columns[start + to * n + from] = matrix[start + from * n + to]!;
  return columns;
}

/**
 * Money below which the line model's insertion cannot come, in a few array reads: changes by their price and work alone, runs
 * without closed time, and what follows shifted by no more than is left after its own waiting. Holds where changes obey the
 * triangle inequality of time; elsewhere it is a good order in which to try places.
 */
export class InsertionFloor {
  private readonly problem: CompiledProblem;
  private readonly sequences: Sequences;
  private readonly model: LineModel;
  /** [class × to × from] spec or -1: the change matrix by columns, so that the changes into one set-up lie side by side */
  private readonly changesInto: Int32Array;
  // the option being put somewhere, and its line
  private lot = 0;
  private job = 0;
  private seconds = 0;
  private wanted = 0;
  private line = 0;
  private length = 0;
  /** row of the option's set-up in the change matrix and in its columns */
  private ofSetup = 0;
  /** [position] of the line: options, set-up and instant after the run, spec before it */
  private row = NO_ROW;
  private setups = NO_ROW;
  private frees = NO_ROW;
  private specs = NO_ROW;
  /** s at which the next run could begin, as `own` left it */
  private end = 0;

  constructor(problem: CompiledProblem, sequences: Sequences, model: LineModel) {
    this.problem = problem;
    this.sequences = sequences;
    this.model = model;
    this.changesInto = byColumns(problem);
  }

  /** The option that the next questions are about. */
  ask(option: number): void {
    const { problem, sequences, model } = this;
    const { jobs, lots, options, lines, changes } = problem;
    const lot = options.lot[option]!;
    const job = options.job[option]!;
    const line = options.line[option]!;
    this.lot = lot;
    this.job = job;
    this.seconds = lotSeconds(problem, sequences, option);
    this.wanted = Math.max(
      jobs.release[job]!,
      lots.fixedStart[lot]!,
      options.availableFrom[option]!,
      model.ready[lot]!,
    );
    this.line = line;
    this.length = sequences.length[line]!;
    const row = lines.changeClass[line]! * changes.setupCount + options.setup[option]!;
    this.ofSetup = row * changes.setupCount;
    this.row = sequences.at[line]!;
    this.setups = model.setup[line]!;
    this.frees = model.free[line]!;
    this.specs = model.change[line]!;
  }

  /** Money at the least for the changes around a position of the option's line and for its own lateness there. O(1). */
  own(position: number): number {
    const { model, line, ofSetup } = this;
    const { options, lines, changes } = this.problem;
    const before = position === 0 ? lines.initialSetup[line]! : this.setups[position - 1]!;
    let money = 0;
    let end = position === 0 ? lines.freeAt[line]! : this.frees[position - 1]!;
    const into = before < 0 ? -1 : this.changesInto[ofSetup + before]!;
    if (into >= 0) {
      money = changes.cost[into]!;
      end += changes.total[into]!;
    }
    end = (end > this.wanted ? end : this.wanted) + this.seconds;
    money += model.lateness.of(this.lot, this.job, end);
    this.end = end;
    if (position === this.length) return money;
    const out = changes.matrix[ofSetup + options.setup[this.row[position]!]!]!;
    const old = this.specs[position]!;
    if (old >= 0) money -= changes.cost[old]!;
    if (out < 0) return money;
    this.end = end + changes.total[out]!;
    return money + changes.cost[out]!;
  }

  /** The same and the lateness of what it shifts. O(what it shifts). */
  withShift(position: number): number {
    const { model, problem, line, row, length } = this;
    const { options, jobs, lots } = problem;
    let money = this.own(position);
    if (position === length) return money;
    const ends = this.frees;
    const gaps = model.gap[line]!;
    let shift = this.end - model.start[line]![position]!;
    for (let p = position; shift > 0;) {
      const at = ends[p]!;
      const lot = options.lot[row[p]!]!;
      const job = lots.job[lot]!;
      if (at + shift > jobs.due[job]!)
        money += model.lateness.of(lot, job, at + shift) - model.lateness.of(lot, job, at);
      p++;
      if (p === length) break;
      shift -= gaps[p]!;
    }
    return money;
  }
}
