import { describe, expect, it } from "vitest";
import { changesMatter, type OneLine } from "./one-line.ts";

/** Three orders of 5, 7 and 9 s; rows: after order 0, 1, 2 and what the line holds first. */
function lineWith(step: readonly number[], changeMoney: readonly number[] = step.map(() => 0)): OneLine {
  return {
    n: 3,
    freeAt: 0,
    step: Int32Array.from(step),
    changeMoney: Float64Array.from(changeMoney),
    changesCost: changeMoney.some((money) => money > 0),
    due: new Float64Array(3),
    rate: new Float64Array(3).fill(1),
  };
}

describe("changes of one line", () => {
  it("do not matter where each order takes the same after any other, whatever the idle diagonal says", () => {
    expect(changesMatter(lineWith([5, 7, 9, 5, 7, 9, 5, 7, 9, 5, 7, 9]))).toBe(false);
    expect(changesMatter(lineWith([99, 7, 9, 5, 99, 9, 5, 7, 99, 5, 7, 9]))).toBe(false);
  });
  it("matter where one order takes longer after some other, or at first", () => {
    expect(changesMatter(lineWith([5, 7, 9, 5, 7, 10, 5, 7, 9, 5, 7, 9]))).toBe(true);
    expect(changesMatter(lineWith([5, 7, 9, 5, 7, 9, 5, 7, 9, 6, 7, 9]))).toBe(true);
  });
  it("matter where a change costs money", () => {
    const step = [5, 7, 9, 5, 7, 9, 5, 7, 9, 5, 7, 9];
    expect(
      changesMatter(
        lineWith(
          step,
          step.map((_, at) => (at === 1 ? 4 : 0)),
        ),
      ),
    ).toBe(true);
  });
});
