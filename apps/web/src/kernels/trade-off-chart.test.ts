import { describe, expect, it } from "vitest";
import { chartPoints, tellingAxes } from "./trade-off-chart.ts";

const box = { width: 100, height: 60, margin: 10 };

describe("places of plans in the picture", () => {
  it("put the least of both left and at the bottom, the most right and at the top", () => {
    expect(
      chartPoints(
        [
          [5, 300],
          [1, 900],
          [3, 600],
        ],
        box,
      ),
    ).toEqual([
      { x: 90, y: 50 },
      { x: 10, y: 10 },
      { x: 50, y: 30 },
    ]);
  });

  it("put plans that do not differ in the middle", () => {
    expect(chartPoints([[7, 7]], box)).toEqual([{ x: 50, y: 30 }]);
    expect(chartPoints([], box)).toEqual([]);
  });

  it("go by the criteria in which the plans differ most", () => {
    expect(
      tellingAxes([
        [100, 10, 50],
        [99, 20, 10],
      ]),
    ).toEqual([1, 2]);
    expect(tellingAxes([[1, 1, 1]])).toEqual([0, 1]);
    expect(tellingAxes([])).toEqual([0, 0]);
  });
});
