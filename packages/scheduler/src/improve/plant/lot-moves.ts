import { anyLot, takeLot, type RuinState } from "./ruin.ts";

/** Lots of a job that are in use, by number. */
function lotsInUse({ problem, sequences }: RuinState, job: number): number[] {
  const { firstLot } = problem.lots;
  const used: number[] = [];
  for (let lot = firstLot[job]!; lot < firstLot[job + 1]!; lot++)
    if (sequences.pieces[lot]! > 0) used.push(lot);
  return used;
}

function emptyLot({ problem, sequences }: RuinState, job: number): number {
  const { firstLot } = problem.lots;
  for (let lot = firstLot[job]!; lot < firstLot[job + 1]!; lot++) if (sequences.pieces[lot] === 0) return lot;
  return -1;
}

/** Units that a lot may give away and stay large enough. */
function unitsToGive({ problem, sequences }: RuinState, lot: number): number {
  const { job, leastPieces, unitPieces } = problem.lots;
  return Math.floor((sequences.pieces[lot]! - leastPieces[job[lot]!]!) / unitPieces[job[lot]!]!);
}

function leastUnits({ problem }: RuinState, job: number): number {
  return Math.ceil(problem.lots.leastPieces[job]! / problem.lots.unitPieces[job]!);
}

/** A lot that may be split: a late one, a long one or any. */
function lotToSplit(state: RuinState): number {
  const { problem, random, start, end } = state;
  const { job } = problem.lots;
  const kind = random.below(3);
  const lengthOf = (lot: number): number => (start[lot]! < 0 ? Infinity : end[lot]! - start[lot]!);
  let best = -1;
  for (let tries = 0; tries < 12; tries++) {
    const lot = anyLot(state);
    const own = job[lot]!;
    if (emptyLot(state, own) < 0 || unitsToGive(state, lot) < leastUnits(state, own)) continue;
    const isLate = start[lot]! < 0 || end[lot]! > problem.jobs.due[own]!;
    if (kind === 2 || (kind === 0 && isLate)) return lot;
    if (best < 0 || lengthOf(lot) > lengthOf(best)) best = lot;
  }
  return best;
}

/** Gives part of a lot to one that is not in use, half or any number of units; both are out then. */
function split(state: RuinState): boolean {
  const { problem, sequences, random, lineOf, ruined } = state;
  const lot = lotToSplit(state);
  if (lot < 0) return false;
  const job = problem.lots.job[lot]!;
  const least = leastUnits(state, job);
  const most = unitsToGive(state, lot);
  const units = random.below(2) === 0 ? (least + most) >> 1 : least + random.below(most - least + 1);
  const given = units * problem.lots.unitPieces[job]!;
  const other = emptyLot(state, job);
  if (lineOf[lot]! >= 0) takeLot(state, lot);
  sequences.pieces[lot]! -= given;
  sequences.pieces[other] = given;
  ruined.lots.push(other);
  return true;
}

/** Two lots of one job that stand on lines, or null: the first such job from a random one on. */
function twoLots(state: RuinState): readonly [number, number] | null {
  const { problem, random, lineOf } = state;
  const count = problem.jobs.count;
  const from = random.below(count);
  for (let i = 0; i < count; i++) {
    const used = lotsInUse(state, (from + i) % count);
    if (used.length < 2 || lineOf[used[0]!]! < 0) continue;
    const a = random.below(used.length);
    const b = (a + 1 + random.below(used.length - 1)) % used.length;
    return [used[a]!, used[b]!];
  }
  return null;
}

/** Puts the pieces of two lots into the one with the lower number, which is out then. */
function join(state: RuinState): boolean {
  const { sequences, ruined } = state;
  const pair = twoLots(state);
  if (pair === null) return false;
  const [kept, emptied] = [Math.min(...pair), Math.max(...pair)];
  takeLot(state, emptied);
  ruined.lots.pop();
  takeLot(state, kept);
  sequences.pieces[kept]! += sequences.pieces[emptied]!;
  sequences.pieces[emptied] = 0;
  return true;
}

/** Moves units from one lot to another where they stand. */
function shift(state: RuinState): boolean {
  const { problem, sequences, random } = state;
  const pair = twoLots(state);
  if (pair === null) return false;
  const most = unitsToGive(state, pair[0]);
  if (most < 1) return false;
  const pieces = (1 + random.below(most)) * problem.lots.unitPieces[problem.lots.job[pair[0]]!]!;
  for (const [lot, sign] of [
    [pair[0], -1],
    [pair[1], 1],
  ] as const) {
    sequences.pieces[lot]! += sign * pieces;
    touch(state, lot);
  }
  return true;
}

/** Has the lot's line timed anew from it on. */
function touch({ problem, sequences, lineOf, ruined }: RuinState, lot: number): void {
  const line = lineOf[lot]!;
  const row = sequences.at[line]!;
  let p = 0;
  while (problem.options.lot[row[p]!] !== lot) p++;
  if (ruined.from[line]! < 0 || p < ruined.from[line]!) ruined.from[line] = p;
}

/** Splits an order further, joins two of its lots or shifts pieces between them; false when nothing was changed. */
export function changeLots(state: RuinState): boolean {
  const kind = state.random.below(4);
  if (kind < 2) return split(state);
  return kind === 2 ? join(state) : shift(state);
}

/** Takes out, as one lot, every order of which a lot found no place: an order is planned with all its lots or not at all. */
export function giveUpTorn(state: RuinState): void {
  const { problem, sequences, model, lineOf, leftOver, ruined } = state;
  const { firstLot, job: jobOf, count } = problem.lots;
  if (count === problem.jobs.count) return;
  const out = new Set(leftOver.map((lot) => jobOf[lot]!));
  leftOver.length = 0;
  for (const job of out) {
    const first = firstLot[job]!;
    for (const lot of lotsInUse(state, job)) {
      const line = lineOf[lot]!;
      if (line >= 0) {
        takeLot(state, lot);
        model.refresh(line, ruined.from[line]!);
      }
      if (lot === first) continue;
      sequences.pieces[first]! += sequences.pieces[lot]!;
      sequences.pieces[lot] = 0;
    }
    leftOver.push(first);
  }
}
