import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb } from "../../../../tests/arbitraries/problem.ts";
import { createRandom, type Random } from "../chance/random.ts";
import { whyUnplanned } from "../explain/why-unplanned.ts";
import { auditPlan } from "../index.ts";
import { buildPlan } from "../plan/build-plan.ts";
import { compile } from "../problem/compile.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { Decoder } from "./decoder.ts";
import { allowedPositions, emptySequences, insertOption, type Sequences } from "./sequences.ts";

/** Moves a random number of units from the first lot to each other one, as far as both stay large enough. */
function splitAtRandom({ jobs, lots }: CompiledProblem, { pieces }: Sequences, random: Random): void {
  for (let job = 0; job < jobs.count; job++) {
    const first = lots.firstLot[job]!;
    const unit = lots.unitPieces[job]!;
    const least = Math.ceil(lots.leastPieces[job]! / unit);
    for (let lot = first + 1; lot < lots.firstLot[job + 1]!; lot++) {
      const most = Math.floor((pieces[first]! - lots.leastPieces[job]!) / unit);
      if (most < least || random.below(3) === 0) continue;
      pieces[lot] = unit * (least + random.below(most - least + 1));
      pieces[first]! -= pieces[lot]!;
    }
  }
}

function randomLots(problem: CompiledProblem, seed: number): Sequences {
  const random = createRandom(seed);
  const sequences = emptySequences(problem);
  splitAtRandom(problem, sequences, random);
  const { lots, options } = problem;
  for (let lot = 0; lot < lots.count; lot++) {
    const count = lots.firstOption[lot + 1]! - lots.firstOption[lot]!;
    if (count === 0 || sequences.pieces[lot] === 0) continue;
    const option = lots.firstOption[lot]! + random.below(count);
    const { first, last } = allowedPositions(problem, sequences, option);
    insertOption(sequences, options.line[option]!, first + random.below(last - first + 1), option);
  }
  return sequences;
}

describe("orders split at random", () => {
  it("pass the audit under all rules, or are refused where one lot finds no room", () => {
    const seen = { split: 0, torn: 0 };
    fc.assert(
      fc.property(problemArb(), fc.integer({ min: 0, max: 1e6 }), (data, seed) => {
        const problem = compile(data);
        const decoder = new Decoder(problem, true);
        if (decoder.decode(randomLots(problem, seed)) === Infinity) {
          seen.torn++;
          return;
        }
        const plan = buildPlan(problem, decoder, whyUnplanned(decoder));
        if (plan.lots.some((lot) => lot.lot > 0)) seen.split++;
        expect(auditPlan(data, plan)).toEqual([]);
      }),
      { seed: 91, numRuns: 400 },
    );
    expect(seen.split).toBeGreaterThan(100);
    expect(seen.torn).toBeGreaterThan(20);
  });
});
