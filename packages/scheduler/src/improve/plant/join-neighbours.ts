import type { CompiledProblem } from "../../problem/compiled-problem.ts";
import { removeAt, type Sequences } from "../../timing/sequences.ts";

/** True when two lots follow one another as if they were one: of one order, in one set-up, no exact start on the second. */
function areOne({ lots, options }: CompiledProblem, option: number, next: number): boolean {
  return (
    options.job[option] === options.job[next] &&
    options.setup[option] === options.setup[next] &&
    lots.fixedStart[options.lot[next]!]! < 0
  );
}

/** The option of another lot of the same job on the same line in the same set-up. */
function optionOfLot({ lots, options }: CompiledProblem, option: number, lot: number): number {
  return lots.firstOption[lot]! + option - lots.firstOption[options.lot[option]!]!;
}

/** Makes one lot of lots of one order that stand side by side on a line; true when there were any. O(lots). */
export function joinNeighbours(problem: CompiledProblem, sequences: Sequences): boolean {
  const { options } = problem;
  const { at, length, pieces } = sequences;
  let joined = false;
  for (let line = 0; line < at.length; line++) {
    const row = at[line]!;
    for (let p = length[line]! - 2; p >= 0; p--) {
      const [option, next] = [row[p]!, row[p + 1]!];
      if (!areOne(problem, option, next)) continue;
      // the lower number stays: the first lot of a job is always in use
      const [a, b] = [options.lot[option]!, options.lot[next]!];
      const [kept, emptied] = [Math.min(a, b), Math.max(a, b)];
      pieces[kept]! += pieces[emptied]!;
      pieces[emptied] = 0;
      row[p] = optionOfLot(problem, option, kept);
      removeAt(sequences, line, p + 1);
      joined = true;
    }
  }
  return joined;
}
