import type { Random } from "../../chance/random.ts";
import type { CompiledProblem } from "../../problem/compiled-problem.ts";
import type { LineModel } from "../../timing/line-model.ts";
import { allowedPositions, insertOption, type Sequences } from "../../timing/sequences.ts";

export interface RecreateState {
  readonly problem: CompiledProblem;
  readonly sequences: Sequences;
  readonly model: LineModel;
  readonly random: Random;
  readonly lineOf: Int32Array;
  readonly leftOver: number[];
  /** [line] first changed position or -1 */
  readonly from: Int32Array;
  /** [job] scratch */
  readonly keys: Float64Array;
}

/** One place in so many is not looked at: it keeps greedy insertion from always doing the same. */
const BLINK = 64;

function sortForInsertion(state: RecreateState, jobs: number[]): void {
  const { problem, random, keys } = state;
  const { due, firstOption, latePerSecond } = problem.jobs;
  const { options, setups } = problem;
  const kind = random.below(10);
  for (const job of jobs) {
    const option = firstOption[job]!;
    const some = firstOption[job + 1]! > option;
    if (kind < 4) keys[job] = random.unit();
    else if (kind < 6) keys[job] = due[job]!;
    else if (kind < 7) keys[job] = some ? -options.seconds[option]! : 0;
    else if (kind < 8) keys[job] = due[job]! - (some ? options.seconds[option]! : 0);
    else if (kind < 9) keys[job] = -latePerSecond[job]!;
    else keys[job] = some ? setups.mould[options.setup[option]!]! * 1e6 + options.setup[option]! : 0;
  }
  jobs.sort((a, b) => keys[a]! - keys[b]! || a - b);
}

function place(state: RecreateState, option: number, position: number): void {
  const { problem, sequences, model, lineOf, from } = state;
  const line = problem.options.line[option]!;
  insertOption(sequences, line, position, option);
  lineOf[problem.options.job[option]!] = line;
  model.countMould(option, 1);
  model.refresh(line, position);
  if (from[line]! < 0 || position < from[line]!) from[line] = position;
}

function insertAtBest(state: RecreateState, job: number): void {
  const { problem, sequences, model, random, leftOver } = state;
  const { jobs } = problem;
  let bestOption = -1;
  let bestPosition = 0;
  let bestMoney = jobs.unplanned[job]!;
  let firstTry = true;
  for (let option = jobs.firstOption[job]!; option < jobs.firstOption[job + 1]!; option++) {
    const { first, last } = allowedPositions(problem, sequences, option);
    for (let position = first; position <= last; position++) {
      if (!firstTry && random.below(BLINK) === 0) continue;
      firstTry = false;
      const money = model.insertion(option, position, bestMoney);
      if (money >= bestMoney) continue;
      bestMoney = money;
      bestOption = option;
      bestPosition = position;
    }
  }
  if (bestOption < 0) {
    leftOver.push(job);
    return;
  }
  place(state, bestOption, bestPosition);
}

/** Puts an order anywhere on any of its lines: what the line model cannot see is found by chance and the full decode. */
function insertAnywhere(state: RecreateState, job: number): void {
  const { problem, sequences, random, leftOver } = state;
  const { firstOption } = problem.jobs;
  const count = firstOption[job + 1]! - firstOption[job]!;
  if (count === 0 || random.below(40) === 0) {
    leftOver.push(job);
    return;
  }
  const option = firstOption[job]! + random.below(count);
  const { first, last } = allowedPositions(problem, sequences, option);
  place(state, option, first + random.below(last - first + 1));
}

/** Puts orders back one by one, each at the place that costs least at that moment. */
export function recreate(state: RecreateState, jobs: number[]): void {
  sortForInsertion(state, jobs);
  for (const job of jobs) insertAtBest(state, job);
}

/** Puts orders back at random places. */
export function scatter(state: RecreateState, jobs: readonly number[]): void {
  for (const job of jobs) insertAnywhere(state, job);
}
