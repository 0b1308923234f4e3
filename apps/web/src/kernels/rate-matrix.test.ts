import type { RateEntry } from "@formweek/contracts";
import { describe, expect, it } from "vitest";
import { cellKey, cycleBar, rateMatrix } from "./rate-matrix.ts";

const rate = (cyclesPerMin: number, proven = false): NonNullable<RateEntry["rate"]> => ({
  cyclesPerMin,
  piecesPerHour: cyclesPerMin * 60 * 24,
  sheetKgPerHour: 200,
  skeletonShare: 0.4,
  proven,
  limit: { name: "oven", text: "", byShare: 0.1 },
  parts: {
    formSeconds: 0.2,
    stabiliseSeconds: 0.6,
    trimSeconds: 0.2,
    closedSeconds: 1,
    openSeconds: 1.4,
    heatingSeconds: 9,
    ovenPositions: 4,
  },
});
const entry = (lineId: string, productId: string, found: RateEntry["rate"]): RateEntry => ({
  lineId,
  mouldId: "M1",
  productId,
  fits: found !== null,
  refusals:
    found === null
      ? [{ code: "depth", text: "too deep", numbers: { neededMm: 120, hasMm: 100 }, compared: null }]
      : [],
  rate: found,
});

describe("rateMatrix", () => {
  it("gives the range over the products of a cell, and none where nothing fits", () => {
    const cells = rateMatrix([
      entry("L1", "P1", rate(20)),
      entry("L1", "P2", rate(24, true)),
      entry("L2", "P1", null),
    ]);
    expect(cells.get(cellKey("M1", "L1"))).toMatchObject({
      range: { least: 20, greatest: 24 },
      isProven: true,
    });
    expect(cells.get(cellKey("M1", "L2"))).toMatchObject({ range: null, isProven: false });
  });
});

describe("cycleBar", () => {
  it("adds up to the whole cycle", () => {
    const bar = cycleBar(rate(20));
    const closed = bar?.closed.reduce((sum, part) => sum + part.seconds, 0) ?? 0;
    expect(closed + (bar?.openSeconds ?? 0) + (bar?.waitSeconds ?? 0)).toBeCloseTo(3, 9);
    expect(bar?.waitSeconds).toBeCloseTo(0.6, 9);
  });

  it("has no picture without the parts", () => {
    expect(cycleBar({ ...rate(20), parts: {} })).toBeNull();
  });
});
