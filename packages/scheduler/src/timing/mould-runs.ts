import { NEVER } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { LineTimes } from "./line-times.ts";
import type { Sequences } from "./sequences.ts";

/** Which lines run which mould, and until when a mould is in use on other lines. */
export class MouldRuns {
  private readonly problem: CompiledProblem;
  private readonly sequences: Sequences;
  private readonly times: LineTimes;
  /** [mould × line] runs of the mould there */
  private readonly runs: Int32Array;
  private readonly kept: Int32Array;

  constructor(problem: CompiledProblem, sequences: Sequences, times: LineTimes) {
    this.problem = problem;
    this.sequences = sequences;
    this.times = times;
    this.runs = new Int32Array(problem.moulds.count * problem.lines.count);
    this.kept = new Int32Array(this.runs.length);
  }

  /** A run is taken out (-1) or put in (+1). */
  count(option: number, change: 1 | -1): void {
    const { options, setups, lines } = this.problem;
    const mould = setups.mould[options.setup[option]!]!;
    if (mould >= 0) this.runs[mould * lines.count + options.line[option]!]! += change;
  }

  recountAll(): void {
    const { at, length } = this.sequences;
    this.runs.fill(0);
    for (let line = 0; line < this.problem.lines.count; line++)
      for (let p = 0; p < length[line]!; p++) this.count(at[line]![p]!, 1);
  }

  keep(): void {
    this.kept.set(this.runs);
  }

  /** Goes back to what `keep` kept. */
  restore(): void {
    this.runs.set(this.kept);
  }

  /** True when fewer copies than lines would use the mould. */
  isScarce(mould: number, line: number): boolean {
    const { moulds, lines } = this.problem;
    const copies = moulds.firstCopy[mould + 1]! - moulds.firstCopy[mould]!;
    let others = 0;
    const base = mould * lines.count;
    for (let l = 0; l < lines.count; l++) if (l !== line && this.runs[base + l]! > 0) others++;
    return others >= copies;
  }

  /** 0 when a copy is free during [from, to) as far as the other lines' runs tell; else when the first of them is free again. */
  takenUntil(mould: number, line: number, [from, to]: readonly [number, number]): number {
    const { moulds, lines, options, setups } = this.problem;
    const { start, free } = this.times;
    const copies = moulds.firstCopy[mould + 1]! - moulds.firstCopy[mould]!;
    const base = mould * lines.count;
    let taken = 0;
    let soonest = NEVER;
    for (let l = 0; l < lines.count; l++) {
      if (l === line || this.runs[base + l] === 0) continue;
      const row = this.sequences.at[l]!;
      const length = this.sequences.length[l]!;
      for (let p = 0; p < length; p++) {
        if (start[l]![p]! >= to) break;
        if (free[l]![p]! <= from || setups.mould[options.setup[row[p]!]!] !== mould) continue;
        taken++;
        if (free[l]![p]! < soonest) soonest = free[l]![p]!;
        break;
      }
    }
    return taken < copies ? 0 : soonest + moulds.carrying[mould]! + 1;
  }
}
