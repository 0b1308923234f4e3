import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { createRandom, type Random } from "../chance/random.ts";
import { compile } from "../problem/compile.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { Decoder } from "./decoder.ts";
import { LineModel } from "./line-model.ts";
import { allowedPositions, emptySequences, insertOption, removeAt, type Sequences } from "./sequences.ts";

const INDEPENDENT = {
  ...SMALL_PLANT,
  moulds: 12,
  heads: false,
  sheets: false,
  services: false,
  teamWork: false,
  lots: false,
  jobs: 10,
};

/** Gives every mould as many copies as lines, so that none is ever waited for. */
const independentArb = problemArb(INDEPENDENT).map((problem) => ({
  ...problem,
  // the balance of all lines is no line's own
  objective: { ...problem.objective, balancePerHour: 0 },
  setups: problem.setups.map((setup) => ({ ...setup, mouldId: null, strippedId: setup.id })),
  moulds: [],
  lines: problem.lines.map((line) => ({
    ...line,
    initial: line.initial === null ? null : { ...line.initial, copy: null },
  })),
}));

function randomSequences(problem: CompiledProblem, seed: number): Sequences {
  const random = createRandom(seed);
  const sequences = emptySequences(problem);
  for (let job = 0; job < problem.jobs.count; job++) {
    const options = problem.jobs.firstOption[job + 1]! - problem.jobs.firstOption[job]!;
    if (options === 0 || random.below(4) === 0) continue;
    const option = problem.jobs.firstOption[job]! + random.below(options);
    const { first, last } = allowedPositions(problem, sequences, option);
    insertOption(sequences, problem.options.line[option]!, first + random.below(last - first + 1), option);
  }
  return sequences;
}

describe("the line model on independent lines", () => {
  it("times every run as the full decode does, and predicts the money of every insertion to the last digit", () => {
    let judged = 0;
    fc.assert(
      fc.property(independentArb, fc.integer({ min: 0, max: 1e6 }), (data, seed) => {
        const problem = compile(data);
        expect(problem.linesAreIndependent).toBe(true);
        const sequences = randomSequences(problem, seed);
        const decoder = new Decoder(problem, false);
        const before = decoder.decode(sequences);
        const model = new LineModel(problem, sequences);
        model.learn(decoder, null);
        expect(model.ready.every((ready) => ready === 0)).toBe(true);
        const placed = new Set<number>();
        for (let line = 0; line < problem.lines.count; line++) {
          for (let p = 0; p < sequences.length[line]!; p++) {
            const job = problem.options.job[sequences.at[line]![p]!]!;
            placed.add(job);
            if (decoder.option[job]! >= 0) expect(model.start[line]![p]).toBe(decoder.start[job]);
          }
        }
        for (let option = 0; option < problem.options.count; option++) {
          const job = problem.options.job[option]!;
          if (placed.has(job)) continue;
          const line = problem.options.line[option]!;
          const { first, last } = allowedPositions(problem, sequences, option);
          for (let position = first; position <= last; position++) {
            const delta = model.insertion(option, position, Infinity);
            if (delta === Infinity) continue;
            const longer = emptySequences(problem);
            sequences.at.forEach((row, l) => {
              longer.at[l]!.set(row);
            });
            longer.length.set(sequences.length);
            insertOption(longer, line, position, option);
            const after = new Decoder(problem, false).decode(longer);
            judged++;
            expect(after - before).toBeCloseTo(delta - problem.jobs.unplanned[job]!, 4);
          }
        }
      }),
      { seed: 71, numRuns: 80 },
    );
    expect(judged).toBeGreaterThan(300);
  });
  it("is as it was after going back", () => {
    fc.assert(
      fc.property(independentArb, fc.integer({ min: 0, max: 1e6 }), (data, seed) => {
        const problem = compile(data);
        const sequences = randomSequences(problem, seed);
        const decoder = new Decoder(problem, false);
        decoder.decode(sequences);
        const model = new LineModel(problem, sequences);
        model.learn(decoder, null);
        const seen = (): string =>
          JSON.stringify([model.free, model.setup, model.start, model.cost, [...model.ready]]);
        const before = seen();
        const lengths = Int32Array.from(sequences.length);
        sequences.length.fill(0);
        for (let line = 0; line < lengths.length; line++) model.refresh(line, 0);
        sequences.length.set(lengths);
        model.restore(new Int32Array(lengths.length));
        expect(seen()).toBe(before);
      }),
      { seed: 72, numRuns: 30 },
    );
  });
});

/** Moves a random run to a random place of its order, in sequences and counts; the first changed position of each line, or -1. */
function moveOne(model: LineModel, sequences: Sequences, random: Random): Int32Array {
  const { problem } = model;
  const from = new Int32Array(problem.lines.count).fill(-1);
  const touch = (line: number, position: number): void => {
    from[line] = from[line]! < 0 ? position : Math.min(from[line]!, position);
  };
  const line = random.below(problem.lines.count);
  if (sequences.length[line] === 0) return from;
  const position = random.below(sequences.length[line]!);
  const taken = sequences.at[line]![position]!;
  removeAt(sequences, line, position);
  model.mouldRuns.count(taken, -1);
  touch(line, position);
  const lot = problem.options.lot[taken]!;
  const { firstOption } = problem.lots;
  const option = firstOption[lot]! + random.below(firstOption[lot + 1]! - firstOption[lot]!);
  const { first, last } = allowedPositions(problem, sequences, option);
  const into = first + random.below(last - first + 1);
  insertOption(sequences, problem.options.line[option]!, into, option);
  model.mouldRuns.count(option, 1);
  touch(problem.options.line[option]!, into);
  return from;
}

describe("the line model on lines that share moulds and crews", () => {
  it("knows the same, learnt from what changed, as learnt anew", () => {
    let partly = 0;
    fc.assert(
      fc.property(problemArb(SMALL_PLANT), fc.integer({ min: 0, max: 1e6 }), (data, seed) => {
        const problem = compile(data);
        const sequences = randomSequences(problem, seed);
        const random = createRandom(seed);
        const decoder = new Decoder(problem, false);
        decoder.decode(sequences);
        const model = new LineModel(problem, sequences);
        model.learn(decoder, null);
        const known = ({
          free,
          setup,
          start,
          change,
          gap,
          cost,
          lateRate,
          ready,
          mouldRuns,
        }: LineModel): unknown =>
          sequences.at.map((row, line) => {
            const length = sequences.length[line]!;
            const scarce = Array.from({ length: problem.moulds.count }, (_, mould) =>
              mouldRuns.isScarce(mould, line),
            );
            const lots = [...row.subarray(0, length)].map((option) => problem.options.lot[option]!);
            const rows = [free, setup, start, change, gap, cost].map((times) => [
              ...times[line]!.subarray(0, length),
            ]);
            return [
              rows,
              [...lateRate[line]!.subarray(0, length + 1)],
              lots.map((lot) => ready[lot]),
              scarce,
            ];
          });
        for (let step = 0; step < 6; step++) {
          const from = moveOne(model, sequences, random);
          decoder.decode(sequences);
          model.learn(decoder, from);
          const anew = new LineModel(problem, sequences);
          anew.learn(decoder, null);
          expect(known(model)).toEqual(known(anew));
          if (from.some((position) => position > 0)) partly++;
          // what was learnt is also what is gone back to
          const before = known(model);
          for (let line = 0; line < problem.lines.count; line++) model.refresh(line, 0);
          model.restore(new Int32Array(problem.lines.count));
          expect(known(model)).toEqual(before);
        }
      }),
      { seed: 73, numRuns: 150 },
    );
    expect(partly).toBeGreaterThan(100);
  });
});
