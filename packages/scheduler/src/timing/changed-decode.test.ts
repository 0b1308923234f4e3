import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { createRandom, type Random } from "../chance/random.ts";
import { construct } from "../construct/construct.ts";
import { compile } from "../problem/compile.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { finish } from "../work/work.ts";
import { ChangedDecode } from "./changed-decode.ts";
import { Decoder } from "./decoder.ts";
import { copySequences, emptySequences, insertOption, removeAt, type Sequences } from "./sequences.ts";

/** Moves a few runs to random places of lines that may run them; answers the first changed position by line, -1 for none. */
function change(problem: CompiledProblem, sequences: Sequences, random: Random): Int32Array {
  const from = new Int32Array(problem.lines.count).fill(-1);
  const touch = (line: number, position: number): void => {
    if (from[line]! < 0 || position < from[line]!) from[line] = position;
  };
  for (let moves = 1 + random.below(3); moves > 0; moves--) {
    const line = random.below(problem.lines.count);
    if (sequences.length[line] === 0) continue;
    const position = random.below(sequences.length[line]!);
    const lot = problem.options.lot[sequences.at[line]![position]!]!;
    removeAt(sequences, line, position);
    touch(line, position);
    const first = problem.lots.firstOption[lot]!;
    const option = first + random.below(problem.lots.firstOption[lot + 1]! - first);
    const into = problem.options.line[option]!;
    const at = random.below(sequences.length[into]! + 1);
    insertOption(sequences, into, at, option);
    touch(into, at);
  }
  return from;
}

/** What runs, by lot. */
function runsOf({ problem, option, start, end, copy, service }: Decoder): number[][] {
  return Array.from({ length: problem.lots.count }, (_, lot) =>
    option[lot]! < 0 ? [] : [option[lot]!, start[lot]!, end[lot]!, copy[lot]!, service[lot]!],
  );
}

describe("the decode of a changed plan", () => {
  it("is that of the whole plan, whatever was kept before", () => {
    let finite = 0;
    fc.assert(
      fc.property(problemArb({ ...SMALL_PLANT, jobs: 40 }), fc.nat(), (data, seed) => {
        const problem = compile(data);
        const random = createRandom(seed);
        const decoder = new Decoder(problem, false);
        const plain = new Decoder(problem, false);
        const timing = new ChangedDecode(decoder, 1 + random.below(4));
        const kept = finish(construct(problem, plain));
        const trial = emptySequences(problem);
        timing.whole(kept, { lateScale: 1, limit: Infinity });
        timing.keep();
        for (let i = 0; i < 12; i++) {
          copySequences(kept, trial);
          const from = change(problem, trial, random);
          const lateScale = random.below(2) === 0 ? 1 : 0.1;
          const limit = random.below(4) === 0 ? plain.decode(kept, lateScale) : Infinity;
          const money = timing.changed(trial, from, { lateScale, limit });
          expect(money).toBe(plain.decode(trial, lateScale, limit));
          if (money === Infinity) continue;
          finite++;
          expect(runsOf(decoder)).toEqual(runsOf(plain));
          expect(decoder.sums).toEqual(plain.sums);
          if (random.below(3) === 0) continue;
          timing.keep();
          copySequences(trial, kept);
        }
      }),
      { seed: 97, numRuns: 120 },
    );
    expect(finite).toBeGreaterThan(300);
  });
});
