import { describe, expect, it } from "vitest";
import { fullestLayout, squareLayout, staggeredLayout } from "../fit/cavity-layout.ts";
import { POLYMER_DEFAULTS } from "../material/polymer-defaults.ts";
import { needsOfRate } from "./cycle-questions.ts";
import { cavitiesFor, hourlyOutput } from "./shot.ts";
import { exampleWith, soundCycle } from "./worked-example.ts";

const SHOT = { cavities: 33, sheetKg: 0.5, netKg: 0.3, skeletonShare: 0.4 };

describe("facts of the trade (common practice, no source)", () => {
  /** A fast large line with the handling time that goes with products up to 100 mm deep. */
  const light = exampleWith({
    line: {
      formingLengthMm: 650,
      formingWidthMm: 850,
      openTime: { kind: "table", rows: [{ depthMm: 100, openSeconds: 1.4 }] },
      oven: { heatedLengthMm: 9000, maxNetFluxKwPerM2: 20 },
      extruderFlowKgPerH: null,
    },
    mould: { depthMm: 95, formSeconds: 0.06, trimSeconds: 0.05 },
    product: { netMassG: 2.5, wallThicknessMm: 0.2 },
    sheet: { thicknessMm: 0.8 },
    polymer: POLYMER_DEFAULTS.PP,
  });

  it("an open time near 1.4 s leaves little more than a quarter of a second closed at 36 cycles/min", () => {
    // common practice, no source
    const needs = needsOfRate(soundCycle(light), light, 36);
    expect(needs.longestClosedSeconds).toBeGreaterThan(0.25);
    expect(needs.longestClosedSeconds).toBeLessThan(0.28);
  });

  it("a light, quickly stabilised product up to 100 mm deep reaches 36 cycles/min with it, a thick wall does not", () => {
    // common practice, no source
    const cycle = soundCycle(light);
    expect(cycle.parts.stabiliseSeconds).toBeLessThan(0.16);
    expect(cycle.cyclesPerMin).toBeGreaterThanOrEqual(36);
    expect(cycle.cyclesPerMin).toBeLessThan(40);
    expect(
      soundCycle({ ...light, product: { ...light.product, wallThicknessMm: 0.5 } }).cyclesPerMin,
    ).toBeLessThan(30);
  });

  it("more than 130,000 cups/h at 36 cycles/min take 61 cavities or more", () => {
    // common practice, no source
    expect(cavitiesFor(130_000, 36)).toBe(61);
    expect(hourlyOutput({ ...SHOT, cavities: 60 }, 36, 0).piecesPerH).toBeLessThan(130_000);
    expect(hourlyOutput({ ...SHOT, cavities: 61 }, 36, 0).piecesPerH).toBeGreaterThan(130_000);
  });

  it.each([71, 72, 73])(
    "61 and more rims of %s mm fit a forming area of 850 × 650 mm with any usual web and edge",
    (rimDiameterMm) => {
      // common practice, no source: web 4 to 12 mm between rims, up to 25 mm kept free at the edge
      const area = { lengthMm: 650, widthMm: 850, rimDiameterMm };
      for (const webMm of [4, 6, 8, 10, 12])
        for (const edgeMm of [0, 10, 20, 25]) {
          expect(squareLayout({ ...area, webMm, edgeMm }).cavities).toBeGreaterThanOrEqual(63);
          expect(fullestLayout({ ...area, webMm, edgeMm }).cavities).toBeGreaterThanOrEqual(72);
        }
    },
  );

  it("with an 8 mm web and 15 mm edges 70 rims of 73 mm stand in a square pattern, 77 staggered", () => {
    // common practice, no source; the counts are worked out by hand: 8.6 and 10.6 pitches
    const area = { lengthMm: 650, widthMm: 850, rimDiameterMm: 73, webMm: 8, edgeMm: 15 };
    expect(squareLayout(area)).toMatchObject({ rows: 7, perOddRow: 10, cavities: 70 });
    expect(staggeredLayout(area).cavities).toBe(77);
    expect(hourlyOutput({ ...SHOT, cavities: 70 }, 36, 0).piecesPerH).toBe(151_200);
  });

  it("rim rolling does not slow the cycle of such a line", () => {
    // common practice, no source
    const rolled = { ...light, product: { ...light.product, rimRolled: true } };
    expect(soundCycle(rolled).cycleSeconds).toBe(soundCycle(light).cycleSeconds);
  });

  it.each([0.2, 0.8, 2.8])("sheet of %s mm has a cycle", (thicknessMm) => {
    // common practice, no source: sheet from 0.2 to 2.8 mm
    const thin = {
      ...light,
      sheet: { ...light.sheet, thicknessMm },
      product: { ...light.product, netMassG: thicknessMm * 3 },
    };
    const cycle = soundCycle(thin);
    expect(cycle.cyclesPerMin).toBeGreaterThan(5);
    expect(cycle.cyclesPerMin).toBeLessThanOrEqual(40);
  });

  it("a product 210 mm deep runs slower than one of 100 mm, still in the published range", () => {
    // common practice, no source: depth up to 210 mm; deep cups and tubs 18 to 30 cycles/min
    const table = {
      kind: "table" as const,
      rows: [
        { depthMm: 100, openSeconds: 1.4 },
        { depthMm: 210, openSeconds: 1.9 },
      ],
    };
    const deep = {
      ...light,
      line: { ...light.line, openTime: table },
      mould: { ...light.mould, depthMm: 210 },
    };
    expect(soundCycle(deep).cyclesPerMin).toBeGreaterThan(18);
    expect(soundCycle(deep).cyclesPerMin).toBeLessThan(30);
  });
});
