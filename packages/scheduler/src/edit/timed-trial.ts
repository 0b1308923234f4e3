import { NEVER } from "../problem/calendar.ts";
import type { Decoder } from "../timing/decoder.ts";
import type { Sequences } from "../timing/sequences.ts";
import { Turn } from "../timing/turns.ts";
import type { StandingPlan } from "./standing-plan.ts";

/** Lots that the decoder, which timed the sequences last, could not place. */
export function leftOut({ problem, option: running }: Decoder, { at, length }: Sequences): readonly number[] {
  const lots: number[] = [];
  at.forEach((row, line) => {
    for (let p = 0; p < length[line]!; p++) {
      const lot = problem.options.lot[row[p]!]!;
      if (running[lot] !== row[p]) lots.push(lot);
    }
  });
  return lots;
}

/** Money of the sequences' plan; Infinity where it is `limit` or more, or where a lot finds no room. */
export function moneyOf(decoder: Decoder, sequences: Sequences, limit: number): number {
  const money = decoder.decode(sequences, 1, limit);
  return money < limit && leftOut(decoder, sequences).length === 0 ? money : Infinity;
}

/** Lots that do not take their turn as usual and start later than in the standing plan, or no more. */
function delayedTurns({ problem, start }: StandingPlan, decoder: Decoder, sequences: Sequences): number[] {
  const lots: number[] = [];
  for (let lot = 0; lot < problem.lots.count; lot++) {
    if (sequences.turn[lot] === Turn.asItComes || sequences.pieces[lot] === 0) continue;
    const now = decoder.option[lot]! < 0 ? NEVER : decoder.start[lot]!;
    if (now > start[lot]!) lots.push(lot);
  }
  return lots;
}

/**
 * Times the sequences. A lot may have given way to another that is no longer there: turns that were out of the usual and now
 * delay their lot become usual where that is cheaper. Leaves the plan in the decoder. O(decode), and one for each such turn.
 */
export function timeTrial(standing: StandingPlan, decoder: Decoder, sequences: Sequences): void {
  let least = moneyOf(decoder, sequences, Infinity);
  // The decoder holds the plan of the sequences as they are, not of a turn that was put back.
  let isTimed = true;
  for (const lot of delayedTurns(standing, decoder, sequences)) {
    const turn = sequences.turn[lot]!;
    sequences.turn[lot] = Turn.asItComes;
    const money = moneyOf(decoder, sequences, Infinity);
    isTimed = money < least;
    if (isTimed) least = money;
    else sequences.turn[lot] = turn;
  }
  if (!isTimed) decoder.decode(sequences);
}
