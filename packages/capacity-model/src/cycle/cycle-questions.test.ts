import { describe, expect, it } from "vitest";
import { calibrationFrom } from "./calibration.ts";
import { cycleWithout, needsOfRate, obstaclesTo } from "./cycle-questions.ts";
import { WORKED_EXAMPLE, exampleWith, soundCycle } from "./worked-example.ts";

describe("questions about the cycle", () => {
  it("tells the cycle without the binding limit and without a named one", () => {
    const cycle = soundCycle(WORKED_EXAMPLE);
    const without = cycleWithout(cycle);
    expect(without).toMatchObject({ without: "oven", limit: { code: "station" } });
    expect(without?.gainShare).toBeCloseTo(2 / 1.88954 - 1, 5);
    expect(cycleWithout(cycle, "stacker")).toMatchObject({ gainShare: 0, limit: { code: "oven" } });
    expect(cycleWithout(cycle, "rim-rolling")).toBeNull();
  });

  it("names the first of two limits that tie, and a margin of 0", () => {
    const cycle = soundCycle(
      exampleWith({
        line: { stackerMaxCyclesPerMin: 20, maxDryCyclesPerMin: 20 },
        mould: { maxCyclesPerMin: 20 },
      }),
    );
    expect(cycle.limit).toMatchObject({
      code: "stacker",
      overNextShare: 0,
      next: { code: "line-dry-cycle" },
    });
    expect(cycleWithout(cycle)).toMatchObject({ gainShare: 0, cyclesPerMin: 20 });
  });

  it("lists what stands against a wanted rate, slowest first", () => {
    const cycle = soundCycle(WORKED_EXAMPLE);
    expect(obstaclesTo(cycle, 30)).toEqual([]);
    const obstacles = obstaclesTo(cycle, 36);
    expect(obstacles.map((obstacle) => obstacle.limit.code)).toEqual(["oven", "station"]);
    expect(obstacles[0]?.secondsTooLong).toBeCloseTo(2 - 60 / 36, 9);
    expect(obstacles[0]?.shareTooLong).toBeCloseTo(0.2, 9);
  });

  it("says what a wanted rate needs, and the needs met give that rate", () => {
    const inputs = WORKED_EXAMPLE;
    const needs = needsOfRate(soundCycle(inputs), inputs, 36);
    expect(needs.ovenPositions).toBe(9);
    expect(needs.heatedLengthMm).toBe(4680);
    expect(needs.sheetFlowKgPerH).toBeCloseTo(0.43766 * 36 * 60, 0);
    expect(needs.longestClosedSeconds).toBeCloseTo(60 / 36 - 0.78667, 4);
    const met = exampleWith({
      line: {
        oven: { ...inputs.line.oven, heatedLengthMm: needs.heatedLengthMm },
        extruderFlowKgPerH: needs.sheetFlowKgPerH * (1 + 1e-12),
      },
      mould: { calibrationFactor: (needs.longestClosedSeconds - 0.18 - 1e-6) / 0.922877 },
    });
    expect(obstaclesTo(soundCycle(met), 36)).toEqual([]);
  });

  it("finds the calibration factor again from a measured rate", () => {
    const slow = exampleWith({ mould: { calibrationFactor: 2.2 } });
    const measured = soundCycle(slow);
    expect(measured.limit.code).toBe("station");
    const calibration = calibrationFrom(slow, measured.cyclesPerMin);
    expect(calibration.kind).toBe("factor");
    expect(calibration.kind === "factor" ? calibration.calibrationFactor : NaN).toBeCloseTo(2.2, 5);
  });

  it("refuses a measured rate that says nothing about the mould", () => {
    expect(calibrationFrom(WORKED_EXAMPLE, 30)).toMatchObject({
      kind: "unusable",
      code: "held-by-another-limit",
    });
    expect(calibrationFrom(WORKED_EXAMPLE, 75)).toMatchObject({
      kind: "unusable",
      code: "faster-than-parts",
    });
    expect(calibrationFrom(exampleWith({ product: { wallThicknessMm: 1e-4 } }), 25)).toMatchObject({
      code: "nothing-to-stabilise",
    });
    expect(calibrationFrom(exampleWith({ polymer: { mouldTemperatureC: 70 } }), 25)).toMatchObject({
      kind: "impossible",
    });
  });
});
