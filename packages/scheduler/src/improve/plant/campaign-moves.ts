import { allowedPositions } from "../../timing/sequences.ts";
import { place, insertAtBest, type RecreateState } from "./recreate.ts";
import { positionOf, seedLot, takeOut, type RuinState } from "./ruin.ts";

/** A campaign taken out of its line: its lots in the order in which they ran. */
interface Campaign {
  readonly line: number;
  readonly lots: number[];
}

/** Same mould, or same set-up where there are no moulds. */
function isOneCampaign({ problem }: RuinState, a: number, b: number): boolean {
  const { options, setups } = problem;
  const [one, other] = [options.setup[a]!, options.setup[b]!];
  return one === other || (setups.mould[one]! >= 0 && setups.mould[one] === setups.mould[other]);
}

/** Takes out the campaign that a lot runs in, or that of some lot before it on its line; no lots when none has a place. */
export function takeCampaign(state: RuinState): Campaign {
  const { problem, sequences, lineOf, random } = state;
  const seed = seedLot(state);
  if (seed < 0) return { line: -1, lots: [] };
  const line = lineOf[seed]!;
  const row = sequences.at[line]!;
  let at = positionOf(state, seed);
  if (random.below(2) === 0) at = random.below(at + 1);
  let first = at;
  let last = at;
  while (first > 0 && isOneCampaign(state, row[first - 1]!, row[at]!)) first--;
  while (last + 1 < sequences.length[line]! && isOneCampaign(state, row[last + 1]!, row[at]!)) last++;
  // now and then only its beginning or its end
  if (last > first && random.below(3) === 0) {
    if (random.below(2) === 0) last = first + random.below(last - first);
    else first += 1 + random.below(last - first);
  }
  const lots: number[] = [];
  for (let p = first; p <= last; p++) lots.push(problem.options.lot[row[p]!]!);
  for (let p = last; p >= first; p--) takeOut(state, line, p);
  return { line, lots };
}

/** The lot's option on a line with the mould that it should run in if it has one there; -1 for none. */
function optionOn(state: RecreateState, lot: number, line: number, mould: number): number {
  const { options, lots, setups } = state.problem;
  let found = -1;
  for (let option = lots.firstOption[lot]!; option < lots.firstOption[lot + 1]!; option++) {
    if (options.line[option] !== line) continue;
    if (setups.mould[options.setup[option]!] === mould) return option;
    if (found < 0) found = option;
  }
  return found;
}

/** Puts a campaign as a whole between two others, on its own line or on another that may run it; what can't go there goes where it costs least. */
export function placeCampaign(state: RecreateState, { line: home, lots }: Campaign): void {
  const { problem, sequences, random } = state;
  const { options, setups } = problem;
  const lead = lots[0]!;
  const { firstOption } = problem.lots;
  const any = firstOption[lead]! + random.below(firstOption[lead + 1]! - firstOption[lead]!);
  const line = random.below(2) === 0 ? home : options.line[any]!;
  const row = sequences.at[line]!;
  let position = random.below(sequences.length[line]! + 1);
  const mouldAt = (p: number): number => setups.mould[options.setup[row[p]!]!]!;
  while (position > 0 && position < sequences.length[line]! && mouldAt(position - 1) === mouldAt(position))
    position++;
  let mould = -1;
  const left: number[] = [];
  for (const lot of lots) {
    const option = optionOn(state, lot, line, mould);
    if (option < 0) {
      left.push(lot);
      continue;
    }
    mould = setups.mould[options.setup[option]!]!;
    const { first, last } = allowedPositions(problem, sequences, option);
    const at = Math.max(first, Math.min(last, position));
    place(state, option, at);
    position = at + 1;
  }
  for (const lot of left) insertAtBest(state, lot);
}
