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

function insertAtBest(state: RecreateState, job: number): void {
  const { problem, sequences, model, random, lineOf, leftOver, from } = state;
  const { jobs, options } = problem;
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
  const line = options.line[bestOption]!;
  insertOption(sequences, line, bestPosition, bestOption);
  lineOf[job] = line;
  model.countMould(bestOption, 1);
  model.refresh(line, bestPosition);
  if (from[line]! < 0 || bestPosition < from[line]!) from[line] = bestPosition;
}

/** Puts orders back one by one, each at the place that costs least at that moment. */
export function recreate(state: RecreateState, jobs: number[]): void {
  sortForInsertion(state, jobs);
  for (const job of jobs) insertAtBest(state, job);
}
