import type { Random } from "../../chance/random.ts";
import type { CompiledProblem } from "../../problem/compiled-problem.ts";
import type { LineModel } from "../../timing/line-model.ts";
import { removeAt, type Sequences } from "../../timing/sequences.ts";

/** What a ruin took out. Reused from step to step. */
export interface Ruined {
  readonly jobs: number[];
  /** [line] first changed position or -1 */
  readonly from: Int32Array;
}

export interface RuinState {
  readonly problem: CompiledProblem;
  readonly sequences: Sequences;
  readonly model: LineModel;
  /** [job] start and end of its run in the current plan; -1 when it has none */
  readonly start: Int32Array;
  readonly end: Int32Array;
  readonly random: Random;
  /** [job] line that holds it, or -1 when it is left over */
  readonly lineOf: Int32Array;
  readonly ruined: Ruined;
  /** jobs on no line */
  readonly leftOver: number[];
}

function positionOf(state: RuinState, job: number): number {
  const { problem, sequences, lineOf } = state;
  const row = sequences.at[lineOf[job]!]!;
  let p = 0;
  while (problem.options.job[row[p]!] !== job) p++;
  return p;
}

function takeOut(state: RuinState, line: number, position: number): void {
  const { problem, sequences, lineOf, ruined } = state;
  const option = sequences.at[line]![position]!;
  const job = problem.options.job[option]!;
  state.model.countMould(option, -1);
  removeAt(sequences, line, position);
  lineOf[job] = -1;
  ruined.jobs.push(job);
  if (ruined.from[line]! < 0 || position < ruined.from[line]!) ruined.from[line] = position;
}

/** Takes out up to `count` neighbours on the line around a job. */
function takeString(state: RuinState, job: number, count: number): void {
  const { sequences, lineOf, random } = state;
  const line = lineOf[job]!;
  const length = sequences.length[line]!;
  const size = Math.min(count, length);
  const at = positionOf(state, job);
  const lowest = Math.max(0, at - size + 1);
  const highest = Math.min(at, length - size);
  const first = lowest + random.below(highest - lowest + 1);
  for (let i = 0; i < size; i++) takeOut(state, line, first);
}

/** Job of another line that runs near the same time and could trade places with the seed. */
function related(state: RuinState, seed: number, line: number): number {
  const { problem, sequences, start, random } = state;
  const length = sequences.length[line]!;
  if (length === 0) return -1;
  const row = sequences.at[line]!;
  let best = problem.options.job[row[random.below(length)]!]!;
  for (let tries = 0; tries < 3; tries++) {
    const other = problem.options.job[row[random.below(length)]!]!;
    const gap = Math.abs(start[other]! - start[seed]!);
    if (gap < Math.abs(start[best]! - start[seed]!)) best = other;
  }
  return best;
}

function removeStrings(state: RuinState, seed: number, target: number): void {
  const { problem, lineOf, random, ruined } = state;
  const { jobs, options } = problem;
  const first = lineOf[seed]!;
  const each = 1 + random.below(Math.max(1, Math.ceil(target / 2)));
  takeString(state, seed, each);
  const optionCount = jobs.firstOption[seed + 1]! - jobs.firstOption[seed]!;
  for (let tries = 0; tries < 4 && ruined.jobs.length < target; tries++) {
    const option = jobs.firstOption[seed]! + random.below(optionCount);
    const line = tries < 3 ? options.line[option]! : random.below(problem.lines.count);
    if (line === first || ruined.from[line]! >= 0) continue;
    const other = related(state, seed, line);
    if (other >= 0) takeString(state, other, Math.min(each, target - ruined.jobs.length));
  }
}

/** Takes out orders of the seed's mould (or its set-up where there are no moulds), wherever they run. */
function removeMould(state: RuinState, seed: number, target: number): void {
  const { problem, sequences, lineOf, random, ruined } = state;
  const { options, setups } = problem;
  const seedOption = sequences.at[lineOf[seed]!]![positionOf(state, seed)]!;
  const mould = setups.mould[options.setup[seedOption]!]!;
  const firstLine = random.below(problem.lines.count);
  for (let i = 0; i < problem.lines.count; i++) {
    const line = (firstLine + i) % problem.lines.count;
    for (let p = sequences.length[line]! - 1; p >= 0 && ruined.jobs.length < target; p--) {
      const setup = options.setup[sequences.at[line]![p]!]!;
      const same = mould >= 0 ? setups.mould[setup] === mould : setup === options.setup[seedOption];
      if (same && random.below(10) < 9) takeOut(state, line, p);
    }
  }
}

function removeSingles(state: RuinState, target: number): void {
  const { problem, lineOf, random } = state;
  for (let i = 0; i < target; i++) {
    const job = random.below(problem.jobs.count);
    if (lineOf[job]! >= 0) takeOut(state, lineOf[job]!, positionOf(state, job));
  }
}

function seedJob(state: RuinState): number {
  const { problem, start, end, random, lineOf } = state;
  const count = problem.jobs.count;
  const wantsLate = random.below(3) === 0;
  let seed = -1;
  for (let tries = 0; tries < 12; tries++) {
    const job = random.below(count);
    if (lineOf[job]! < 0) continue;
    seed = job;
    const suffers = start[job]! < 0 || end[job]! > problem.jobs.due[job]!;
    if (!wantsLate || suffers) break;
  }
  return seed;
}

/**
 * Takes some orders out of the plan: strings of neighbours on lines that could trade (Christiaens and Vanden Berghe 2020), all
 * of one mould, or single ones; and all that are left over.
 */
export function ruin(state: RuinState, meanSize: number): void {
  const { random, ruined } = state;
  begin(ruined);
  const target = 1 + random.below(2 * meanSize - 1);
  const seed = seedJob(state);
  if (seed >= 0) {
    const kind = random.below(10);
    if (kind < 6) removeStrings(state, seed, target);
    else if (kind < 8) removeMould(state, seed, target);
    else removeSingles(state, Math.max(1, target >> 1));
  }
  takeLeftOver(state);
}

/** Takes out one order, or two, anywhere. */
export function pick(state: RuinState): void {
  begin(state.ruined);
  removeSingles(state, 1 + state.random.below(2));
  if (state.random.below(2) === 0) takeLeftOver(state);
}

function begin(ruined: Ruined): void {
  ruined.jobs.length = 0;
  ruined.from.fill(-1);
}

function takeLeftOver({ ruined, leftOver }: RuinState): void {
  for (const job of leftOver) ruined.jobs.push(job);
  leftOver.length = 0;
}
