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

/** Makes one lot of the lots at a position and after it, if both are of one order; true when they were. O(length of the line). */
function joinAt(problem: CompiledProblem, sequences: Sequences, line: number, p: number): boolean {
  const { at, length, pieces, turn } = sequences;
  const { options } = problem;
  const row = at[line]!;
  if (p + 1 >= length[line]! || !areOne(problem, row[p]!, row[p + 1]!)) return false;
  // the lower number stays: the first lot of a job is always in use
  const [a, b] = [options.lot[row[p]!]!, options.lot[row[p + 1]!]!];
  const [kept, emptied] = [Math.min(a, b), Math.max(a, b)];
  pieces[kept]! += pieces[emptied]!;
  pieces[emptied] = 0;
  turn[kept] = turn[a]!;
  row[p] = optionOfLot(problem, row[p]!, kept);
  removeAt(sequences, line, p + 1);
  return true;
}

/**
 * Makes one lot of lots of one order that stand side by side on a line, and calls `joined` after each pair, which
 * may put it back. O(lots) and a call per pair.
 */
export function joinNeighbours(problem: CompiledProblem, sequences: Sequences, joined: () => void): void {
  for (let line = 0; line < sequences.at.length; line++) {
    for (let p = sequences.length[line]! - 2; p >= 0; p--) {
      if (joinAt(problem, sequences, line, p)) joined();
    }
  }
}
