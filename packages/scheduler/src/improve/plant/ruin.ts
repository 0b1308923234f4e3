import type { Random } from "../../chance/random.ts";
import type { CompiledProblem } from "../../problem/compiled-problem.ts";
import type { LineModel } from "../../timing/line-model.ts";
import { removeAt, type Sequences } from "../../timing/sequences.ts";

/** What a ruin took out. Reused from step to step. */
export interface Ruined {
  readonly lots: number[];
  /** [line] first changed position or -1 */
  readonly from: Int32Array;
}

export interface RuinState {
  readonly problem: CompiledProblem;
  readonly sequences: Sequences;
  readonly model: LineModel;
  /** [lot] start and end of its run in the current plan; start -1 when it has none */
  readonly start: Int32Array;
  readonly end: Int32Array;
  /** lots whose orders are late in the current plan, and those that hold a place but do not run */
  readonly suffering: number[];
  readonly random: Random;
  /** [lot] line that holds it, or -1 when it is left over or not in use */
  readonly lineOf: Int32Array;
  readonly ruined: Ruined;
  /** the one lot of each job on no line */
  readonly leftOver: number[];
}

export function positionOf(state: RuinState, lot: number): number {
  const { problem, sequences, lineOf } = state;
  const row = sequences.at[lineOf[lot]!]!;
  let p = 0;
  while (problem.options.lot[row[p]!] !== lot) p++;
  return p;
}

export function takeOut(state: RuinState, line: number, position: number): void {
  const { problem, sequences, lineOf, ruined } = state;
  const option = sequences.at[line]![position]!;
  const lot = problem.options.lot[option]!;
  state.model.mouldRuns.count(option, -1);
  removeAt(sequences, line, position);
  lineOf[lot] = -1;
  ruined.lots.push(lot);
  if (ruined.from[line]! < 0 || position < ruined.from[line]!) ruined.from[line] = position;
}

/** Takes a lot out of its line. */
export function takeLot(state: RuinState, lot: number): void {
  takeOut(state, state.lineOf[lot]!, positionOf(state, lot));
}

/** Takes out up to `count` neighbours on the line around a lot. */
function takeString(state: RuinState, lot: number, count: number): void {
  const { sequences, lineOf, random } = state;
  const line = lineOf[lot]!;
  const length = sequences.length[line]!;
  const size = Math.min(count, length);
  const at = positionOf(state, lot);
  const lowest = Math.max(0, at - size + 1);
  const highest = Math.min(at, length - size);
  const first = lowest + random.below(highest - lowest + 1);
  for (let i = 0; i < size; i++) takeOut(state, line, first);
}

/** Lot on another line that runs near the same time and could trade places with the seed. */
function related(state: RuinState, seed: number, line: number): number {
  const { problem, sequences, start, random } = state;
  const length = sequences.length[line]!;
  if (length === 0) return -1;
  const row = sequences.at[line]!;
  let best = problem.options.lot[row[random.below(length)]!]!;
  for (let tries = 0; tries < 3; tries++) {
    const other = problem.options.lot[row[random.below(length)]!]!;
    const gap = Math.abs(start[other]! - start[seed]!);
    if (gap < Math.abs(start[best]! - start[seed]!)) best = other;
  }
  return best;
}

function removeStrings(state: RuinState, seed: number, target: number): void {
  const { problem, lineOf, random, ruined } = state;
  const { lots, options } = problem;
  const first = lineOf[seed]!;
  const each = 1 + random.below(Math.max(1, Math.ceil(target / 2)));
  takeString(state, seed, each);
  const optionCount = lots.firstOption[seed + 1]! - lots.firstOption[seed]!;
  for (let tries = 0; tries < 4 && ruined.lots.length < target; tries++) {
    const option = lots.firstOption[seed]! + random.below(optionCount);
    const line = tries < 3 ? options.line[option]! : random.below(problem.lines.count);
    if (line === first || ruined.from[line]! >= 0) continue;
    const other = related(state, seed, line);
    if (other >= 0) takeString(state, other, Math.min(each, target - ruined.lots.length));
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
    for (let p = sequences.length[line]! - 1; p >= 0 && ruined.lots.length < target; p--) {
      const setup = options.setup[sequences.at[line]![p]!]!;
      const same = mould >= 0 ? setups.mould[setup] === mould : setup === options.setup[seedOption];
      if (same && random.below(10) < 9) takeOut(state, line, p);
    }
  }
}

/** A lot in use: every job as likely as any other, and of its lots every one. */
export function anyLot({ problem, sequences, random }: RuinState): number {
  const { firstLot } = problem.lots;
  const job = random.below(problem.jobs.count);
  const first = firstLot[job]!;
  const count = firstLot[job + 1]! - first;
  if (count === 1) return first;
  const lot = first + random.below(count);
  return sequences.pieces[lot]! > 0 ? lot : first;
}

function removeSingles(state: RuinState, target: number): void {
  const { lineOf } = state;
  for (let i = 0; i < target; i++) {
    const lot = anyLot(state);
    if (lineOf[lot]! >= 0) takeLot(state, lot);
  }
}

/** A lot that is late, one time in three, else any that has a place; -1 where none was found. */
export function seedLot(state: RuinState): number {
  const { random, lineOf, suffering } = state;
  if (suffering.length > 0 && random.below(3) === 0) return suffering[random.below(suffering.length)]!;
  for (let tries = 0; tries < 12; tries++) {
    const lot = anyLot(state);
    if (lineOf[lot]! >= 0) return lot;
  }
  return -1;
}

/**
 * Takes some orders out of the plan: strings of neighbours on lines that could trade (Christiaens and Vanden Berghe 2020), all
 * of one mould, or single ones; and all that are left over.
 */
export function ruin(state: RuinState, meanSize: number): void {
  const { random, ruined } = state;
  begin(ruined);
  const target = 1 + random.below(2 * meanSize - 1);
  const seed = seedLot(state);
  if (seed >= 0) {
    const kind = random.below(10);
    if (kind < 6) removeStrings(state, seed, target);
    else if (kind < 8) removeMould(state, seed, target);
    else removeSingles(state, Math.max(1, target >> 1));
  }
  takeLeftOver(state);
}

/** Changes how an order is split, and takes out some others to make room, if there is any order to split; else a usual ruin. */
export function ruinWith(state: RuinState, meanSize: number, change: (state: RuinState) => boolean): void {
  begin(state.ruined);
  if (!change(state)) {
    ruin(state, meanSize);
    return;
  }
  removeSingles(state, state.random.below(meanSize));
  takeLeftOver(state);
}

/** Takes out one order, or two, anywhere. */
export function pick(state: RuinState): void {
  begin(state.ruined);
  removeSingles(state, 1 + state.random.below(2));
  if (state.random.below(2) === 0) takeLeftOver(state);
}

export function begin(ruined: Ruined): void {
  ruined.lots.length = 0;
  ruined.from.fill(-1);
}

/** Orders left over that one step tries again: on a plant that is far too full, all of them would take longer than the search may. */
const MOST_LEFT_OVER = 60;

/** Takes up orders that are left over, any of them where they are many. */
function takeLeftOver({ ruined, leftOver, random }: RuinState): void {
  const count = leftOver.length;
  const kept = Math.max(0, count - MOST_LEFT_OVER);
  for (let i = count - 1; kept > 0 && i >= kept; i--) {
    const j = random.below(i + 1);
    [leftOver[i], leftOver[j]] = [leftOver[j]!, leftOver[i]!];
  }
  for (let i = kept; i < count; i++) ruined.lots.push(leftOver[i]!);
  leftOver.length = kept;
}
