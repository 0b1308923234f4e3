import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  addWorking,
  isOpen,
  nextOpening,
  workedUntil,
  workingBetween,
  workingTimeOf,
} from "./working-time.ts";

const LAST = 60;
const spells = fc.array(fc.tuple(fc.nat(LAST), fc.nat(LAST)), { maxLength: 8 });

/** One flag per second: the plainest record of the same working time. */
function secondsOpen(pairs: readonly (readonly [number, number])[]): readonly boolean[] {
  return Array.from({ length: LAST + 1 }, (_, at) => pairs.some(([start, end]) => start <= at && at < end));
}

function count(open: readonly boolean[], from: number, to: number): number {
  let seconds = 0;
  for (let at = Math.max(0, from); at < to; at += 1) if (open[at] === true) seconds += 1;
  return seconds;
}

describe("working time", () => {
  it("counts work as a second-by-second oracle does", () => {
    fc.assert(
      fc.property(spells, fc.nat(LAST + 5), fc.nat(LAST + 5), (pairs, from, to) => {
        const time = workingTimeOf(pairs);
        const open = secondsOpen(pairs);
        expect(workedUntil(time, from)).toBe(count(open, 0, from));
        expect(workingBetween(time, from, to)).toBe(count(open, from, to));
        expect(isOpen(time, from)).toBe(open[from] ?? false);
        const next = open.findIndex((flag, at) => flag && at >= from);
        expect(nextOpening(time, from)).toBe(next < 0 ? null : next);
      }),
      { numRuns: 500 },
    );
  });

  it("adds work as a second-by-second oracle does", () => {
    fc.assert(
      fc.property(spells, fc.nat(LAST + 5), fc.integer({ min: 1, max: LAST }), (pairs, from, seconds) => {
        const open = secondsOpen(pairs);
        let at = from;
        let left = seconds;
        while (left > 0 && at <= LAST) {
          if (open[at] === true) left -= 1;
          at += 1;
        }
        expect(addWorking(workingTimeOf(pairs), from, seconds)).toBe(left > 0 ? null : at);
      }),
      { numRuns: 500 },
    );
  });

  it("keeps spells sorted, apart and summed up", () => {
    fc.assert(
      fc.property(spells, (pairs) => {
        const { starts, ends, workedBefore } = workingTimeOf(pairs);
        let worked = 0;
        starts.forEach((start, index) => {
          const end = ends[index] ?? Number.NaN;
          expect(end).toBeGreaterThan(start);
          if (index > 0) expect(start).toBeGreaterThan(ends[index - 1] ?? Number.NaN);
          expect(workedBefore[index]).toBe(worked);
          worked += end - start;
        });
      }),
    );
  });

  it("adds nothing where it stands, open or not", () => {
    expect(addWorking(workingTimeOf([[10, 20]]), 5, 0)).toBe(5);
  });

  it("ends work at the end of a spell, not at the start of the next", () => {
    expect(
      addWorking(
        workingTimeOf([
          [0, 10],
          [20, 30],
        ]),
        0,
        10,
      ),
    ).toBe(10);
  });
});
