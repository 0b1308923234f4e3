import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  clipWorkingTime,
  intersectWorkingTimes,
  NEVER_OPEN,
  subtractWorkingTime,
  totalWorking,
  uniteWorkingTimes,
} from "./working-sets.ts";
import { isOpen, workingTimeOf } from "./working-time.ts";

const LAST = 50;
const time = fc.array(fc.tuple(fc.nat(LAST), fc.nat(LAST)), { maxLength: 8 }).map(workingTimeOf);

describe("sets of working time", () => {
  it("opens and shuts second by second as logic says", () => {
    fc.assert(
      fc.property(time, time, (one, other) => {
        const both = intersectWorkingTimes(one, other);
        const either = uniteWorkingTimes(one, other);
        const without = subtractWorkingTime(one, other);
        for (let at = 0; at <= LAST; at += 1) {
          const a = isOpen(one, at);
          const b = isOpen(other, at);
          expect(isOpen(both, at)).toBe(a && b);
          expect(isOpen(either, at)).toBe(a || b);
          expect(isOpen(without, at)).toBe(a && !b);
        }
        expect(totalWorking(either) + totalWorking(both)).toBe(totalWorking(one) + totalWorking(other));
        expect(totalWorking(without) + totalWorking(both)).toBe(totalWorking(one));
      }),
      { numRuns: 400 },
    );
  });

  it("gives nothing for nothing", () => {
    expect(uniteWorkingTimes()).toEqual(NEVER_OPEN);
    expect(totalWorking(NEVER_OPEN)).toBe(0);
    expect(subtractWorkingTime(NEVER_OPEN, workingTimeOf([[0, 9]]))).toEqual(NEVER_OPEN);
  });

  it("cuts to a window", () => {
    expect(clipWorkingTime(workingTimeOf([[0, 10]]), 4, 6)).toEqual(workingTimeOf([[4, 6]]));
    expect(clipWorkingTime(workingTimeOf([[0, 10]]), 6, 4)).toEqual(NEVER_OPEN);
  });
});
