import type { Random } from "../../chance/random.ts";
import type { CompiledProblem } from "../../problem/compiled-problem.ts";
import type { LineModel } from "../../timing/line-model.ts";
import { allowedPositions, insertOption, lotSeconds, type Sequences } from "../../timing/sequences.ts";

import type { BestPlace } from "./best-place.ts";

export interface RecreateState {
  readonly problem: CompiledProblem;
  readonly sequences: Sequences;
  readonly model: LineModel;
  readonly best: BestPlace;
  readonly random: Random;
  readonly lineOf: Int32Array;
  readonly leftOver: number[];
  /** [line] first changed position or -1 */
  readonly from: Int32Array;
  /** [lot] scratch */
  readonly keys: Float64Array;
  /** Nobody waits for more of the step. */
  readonly isGivenUp: () => boolean;
}

/** Lots put back between two looks at whether the step is given up: a plant that is too full has thousands left over. */
const LOTS_PER_LOOK = 16;

function sortForInsertion(state: RecreateState, lots: number[]): void {
  const { problem, sequences, random, keys } = state;
  const { due, latePerSecond } = problem.jobs;
  const { firstOption } = problem.lots;
  const { options, setups } = problem;
  const kind = random.below(10);
  for (const lot of lots) {
    const job = problem.lots.job[lot]!;
    const option = firstOption[lot]!;
    const some = firstOption[lot + 1]! > option;
    const seconds = some ? lotSeconds(problem, sequences, option) : 0;
    if (kind < 4) keys[lot] = random.unit();
    else if (kind < 6) keys[lot] = due[job]!;
    else if (kind < 7) keys[lot] = -seconds;
    else if (kind < 8) keys[lot] = due[job]! - seconds;
    else if (kind < 9) keys[lot] = -latePerSecond[job]!;
    else keys[lot] = some ? setups.mould[options.setup[option]!]! * 1e6 + options.setup[option]! : 0;
  }
  lots.sort((a, b) => keys[a]! - keys[b]! || a - b);
}

export function place(state: RecreateState, option: number, position: number): void {
  const { problem, sequences, model, lineOf, from } = state;
  const line = problem.options.line[option]!;
  insertOption(sequences, line, position, option);
  lineOf[problem.options.lot[option]!] = line;
  model.mouldRuns.count(option, 1);
  model.refresh(line, position);
  model.lateness.noteEnd(problem.options.lot[option]!, model.free[line]![position]!, lineOf);
  if (from[line]! < 0 || position < from[line]!) from[line] = position;
}

export function insertAtBest(state: RecreateState, lot: number): void {
  const { best, leftOver } = state;
  best.find(lot);
  if (best.option < 0) leftOver.push(lot);
  else place(state, best.option, best.position);
}

/** Puts a lot anywhere on any of its lines: what the line model cannot see is found by chance and the full decode. */
function insertAnywhere(state: RecreateState, lot: number): void {
  const { problem, sequences, random, leftOver } = state;
  const { firstOption } = problem.lots;
  const count = firstOption[lot + 1]! - firstOption[lot]!;
  if (count === 0 || random.below(40) === 0) {
    leftOver.push(lot);
    return;
  }
  const option = firstOption[lot]! + random.below(count);
  const { first, last } = allowedPositions(problem, sequences, option);
  place(state, option, first + random.below(last - first + 1));
}

/** Puts lots back one by one, each at the place that costs least at that moment; leaves out the rest of a step that is given up. */
export function recreate(state: RecreateState, lots: number[]): void {
  sortForInsertion(state, lots);
  for (const [index, lot] of lots.entries()) {
    if (index % LOTS_PER_LOOK === LOTS_PER_LOOK - 1 && state.isGivenUp()) {
      state.leftOver.push(...lots.slice(index));
      return;
    }
    insertAtBest(state, lot);
  }
}

/** Puts lots back at random places. */
export function scatter(state: RecreateState, lots: readonly number[]): void {
  for (const lot of lots) insertAnywhere(state, lot);
}
