import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { LineModel } from "./line-model.ts";
import { lotSeconds, type Sequences } from "./sequences.ts";

/**
 * Money below which the line model's insertion cannot come, in a few array reads: changes by their price and work alone, runs
 * without closed time, and what follows shifted by no more than is left after its own waiting. Holds where changes obey the
 * triangle inequality of time; elsewhere it is a good order in which to try places.
 */
export class InsertionFloor {
  private readonly problem: CompiledProblem;
  private readonly sequences: Sequences;
  private readonly model: LineModel;
  // the option being put somewhere
  private option = 0;
  private seconds = 0;
  private wanted = 0;
  /** s at which the next run could begin, as `own` left it */
  private end = 0;

  constructor(problem: CompiledProblem, sequences: Sequences, model: LineModel) {
    this.problem = problem;
    this.sequences = sequences;
    this.model = model;
  }

  /** The option that the next questions are about. */
  ask(option: number): void {
    const { jobs, lots, options } = this.problem;
    const lot = options.lot[option]!;
    this.option = option;
    this.seconds = lotSeconds(this.problem, this.sequences, option);
    this.wanted = Math.max(
      jobs.release[options.job[option]!]!,
      lots.fixedStart[lot]!,
      options.availableFrom[option]!,
      this.model.ready[lot]!,
    );
  }

  /** Money at the least for the changes around a position of the option's line and for its own lateness there. O(1). */
  own(position: number): number {
    const { model, problem, option } = this;
    const { options, lines, changes } = problem;
    const line = options.line[option]!;
    const before = model.setupBefore(line, position);
    const matrix = changes.matrix;
    const n = changes.setupCount;
    const base = lines.changeClass[line]! * n;
    const setup = options.setup[option]!;
    let money = 0;
    let end = model.freeBefore(line, position);
    const into = before < 0 ? -1 : matrix[(base + before) * n + setup]!;
    if (into >= 0) {
      money = changes.cost[into]!;
      end += changes.total[into]!;
    }
    end = (end > this.wanted ? end : this.wanted) + this.seconds;
    money += model.lateness.of(options.lot[option]!, options.job[option]!, end);
    this.end = end;
    if (position === this.sequences.length[line]!) return money;
    const next = options.setup[this.sequences.at[line]![position]!]!;
    const out = matrix[(base + setup) * n + next]!;
    const old = before < 0 ? -1 : matrix[(base + before) * n + next]!;
    if (old >= 0) money -= changes.cost[old]!;
    if (out < 0) return money;
    this.end = end + changes.total[out]!;
    return money + changes.cost[out]!;
  }

  /** The same and the lateness of what it shifts. O(what it shifts). */
  withShift(position: number): number {
    const { model, problem, option } = this;
    const { options, jobs, lots } = problem;
    const line = options.line[option]!;
    let money = this.own(position);
    const length = this.sequences.length[line]!;
    if (position === length) return money;
    const row = this.sequences.at[line]!;
    const ends = model.free[line]!;
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
