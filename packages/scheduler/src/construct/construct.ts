import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Decoder } from "../timing/decoder.ts";
import { withoutPassedOver } from "../timing/passed-over.ts";
import type { Sequences } from "../timing/sequences.ts";
import { dispatch, type DispatchFactors } from "./dispatch.ts";

const FACTORS: readonly DispatchFactors[] = [
  { slack: 2, change: 0.3 },
  { slack: 0.5, change: 1 },
  { slack: 5, change: 0.1 },
];

/** The best of a few dispatch passes under the full timing; the further passes are left out on large plants. */
export function construct(problem: CompiledProblem, decoder: Decoder): Sequences {
  const passes = problem.options.count > 20_000 ? FACTORS.slice(0, 1) : FACTORS;
  let best: Sequences | null = null;
  let bestMoney = Infinity;
  for (const factors of passes) {
    const sequences = dispatch(problem, factors);
    const money = decoder.decode(sequences);
    if (best !== null && money >= bestMoney) continue;
    best = sequences;
    bestMoney = money;
  }
  const chosen = best ?? dispatch(problem, FACTORS[0]!);
  withoutPassedOver(decoder, chosen, decoder.decode(chosen));
  return chosen;
}
