import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { isLarge } from "../problem/plant-size.ts";
import type { Decoder } from "../timing/decoder.ts";
import { withoutPassedOver } from "../timing/passed-over.ts";
import type { Sequences } from "../timing/sequences.ts";
import { dispatch, type DispatchFactors } from "./dispatch.ts";
import type { Work } from "../work/work.ts";

/** Measured on planted plants: little heed to urgency gives few changes, and so free time. */
const FACTORS: readonly [DispatchFactors, ...DispatchFactors[]] = [
  { slack: 40, change: 1 },
  { slack: 20, change: 1 },
  { slack: 10, change: 0.6 },
  { slack: 2, change: 0.3 },
  { slack: 0.5, change: 1 },
];

/** The best of a few dispatch passes under the full timing; two on large plants. */
export function* construct(problem: CompiledProblem, decoder: Decoder): Work<Sequences> {
  const [first, ...others] = FACTORS;
  const passes = isLarge(problem.data) ? others.slice(0, 1) : others;
  let best = yield* dispatch(problem, first);
  yield;
  let bestMoney = decoder.decode(best);
  for (const factors of passes) {
    const sequences = yield* dispatch(problem, factors);
    yield;
    const money = decoder.decode(sequences);
    if (money >= bestMoney) continue;
    best = sequences;
    bestMoney = money;
  }
  yield;
  const money = decoder.decode(best);
  yield;
  withoutPassedOver(decoder, best, money);
  return best;
}
