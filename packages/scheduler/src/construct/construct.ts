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

/** Options up to which a pass takes so little time that it is not broken off. */
const SMALL_OPTIONS = 20_000;

/**
 * The best of a few dispatch passes under the full timing; the further passes are left out on large plants. Null when
 * cancelled before the first pass of a large plant is done; on others there is always a plan.
 */
export function construct(
  problem: CompiledProblem,
  decoder: Decoder,
  isCancelled: () => boolean,
): Sequences | null {
  const isLarge = problem.options.count > SMALL_OPTIONS;
  const passes = isLarge ? FACTORS.slice(0, 1) : FACTORS;
  let best: Sequences | null = null;
  let bestMoney = Infinity;
  for (const factors of passes) {
    if (best !== null && isCancelled()) break;
    const sequences = dispatch(problem, factors, () => isLarge && isCancelled());
    if (sequences === null) return null;
    const money = decoder.decode(sequences);
    if (best !== null && money >= bestMoney) continue;
    best = sequences;
    bestMoney = money;
  }
  if (best !== null) withoutPassedOver(decoder, best, decoder.decode(best));
  return best;
}
