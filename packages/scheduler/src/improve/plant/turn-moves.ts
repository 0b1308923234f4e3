import { Turn } from "../../timing/turns.ts";
import { anyLot, begin, type RuinState } from "./ruin.ts";

const OTHER_TURNS = [Turn.givesWay, Turn.strippedFirst] as const;

/** Changes how one lot takes its turn, where it stands: back to the usual, or from that to another. */
export function changeTurn(state: RuinState): void {
  const { sequences, random, ruined } = state;
  begin(ruined);
  const lot = anyLot(state);
  const other = OTHER_TURNS[random.below(OTHER_TURNS.length)]!;
  sequences.turn[lot] = sequences.turn[lot] === Turn.asItComes ? other : Turn.asItComes;
}
