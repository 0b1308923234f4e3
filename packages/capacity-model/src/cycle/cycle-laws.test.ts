import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formingRate } from "./forming-rate.ts";
import type { CycleInputs } from "./machine-cycle.ts";
import { WORKED_EXAMPLE, soundCycle } from "./worked-example.ts";

const RUNS = { numRuns: 300, seed: 20_260_329 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Sound records over the whole span of thin-gauge forming; nothing here is impossible. */
const soundInputs: fc.Arbitrary<CycleInputs> = fc
  .record({
    depthMm: between(0, 210),
    sheetMm: between(0.2, 2.8),
    wallShare: between(0.1, 1),
    conductance: fc.option(between(50, 20_000)),
    calibration: between(0.2, 5),
    flow: fc.option(between(100, 3000)),
    stacker: between(10, 60),
    rimRolling: between(10, 60),
    rimRolled: fc.boolean(),
    dry: between(20, 80),
    heatedLengthMm: between(520, 12_000),
    performanceFactor: between(0.05, 1.2),
    useTable: fc.boolean(),
  })
  .map((drawn) => ({
    line: {
      ...WORKED_EXAMPLE.line,
      extruderFlowKgPerH: drawn.flow,
      stackerMaxCyclesPerMin: drawn.stacker,
      rimRollingMaxCyclesPerMin: drawn.rimRolling,
      maxDryCyclesPerMin: drawn.dry,
      oven: { heatedLengthMm: drawn.heatedLengthMm, maxNetFluxKwPerM2: 25 },
      performanceFactor: drawn.performanceFactor,
      openTime: drawn.useTable
        ? {
            kind: "table" as const,
            rows: [
              { depthMm: 40, openSeconds: 1.1 },
              { depthMm: 100, openSeconds: 1.4 },
            ],
          }
        : WORKED_EXAMPLE.line.openTime,
    },
    mould: {
      ...WORKED_EXAMPLE.mould,
      depthMm: drawn.depthMm,
      contactConductanceWPerM2K: drawn.conductance,
      calibrationFactor: drawn.calibration,
    },
    product: {
      ...WORKED_EXAMPLE.product,
      netMassG: 1,
      rimRolled: drawn.rimRolled,
      wallThicknessMm: drawn.sheetMm * drawn.wallShare,
    },
    sheet: { ...WORKED_EXAMPLE.sheet, thicknessMm: drawn.sheetMm },
    polymer: WORKED_EXAMPLE.polymer,
  }));

describe("laws of the cycle", () => {
  it("never runs faster than any limit, and the binding one is met", () => {
    fc.assert(
      fc.property(soundInputs, (inputs) => {
        const cycle = soundCycle(inputs);
        for (const limit of cycle.limits)
          expect(cycle.cycleSeconds).toBeGreaterThanOrEqual(limit.cycleSeconds);
        expect(cycle.limits.find((limit) => limit.code === cycle.limit.code)?.cycleSeconds).toBe(
          cycle.cycleSeconds,
        );
        expect(cycle.limit.overNextShare ?? -1).toBeGreaterThanOrEqual(0);
      }),
      RUNS,
    );
  });

  it("keeps cycles/min × cycle seconds at 60 and every number finite", () => {
    fc.assert(
      fc.property(soundInputs, (inputs) => {
        const rate = formingRate({ ...inputs, provenRates: [] });
        if (rate.kind !== "rate") throw new Error(rate.faults[0].cause);
        expect(rate.cyclesPerMin * rate.cycleSeconds).toBeCloseTo(60, 9);
        for (const value of [
          rate.piecesPerH,
          rate.goodPiecesPerH,
          rate.sheetKgPerH,
          rate.netKgPerH,
          rate.shot.skeletonShare,
        ])
          expect(Number.isFinite(value)).toBe(true);
        expect(rate.netKgPerH).toBeLessThanOrEqual(rate.sheetKgPerH);
        expect(rate.goodPiecesPerH).toBeLessThanOrEqual(rate.piecesPerH);
      }),
      RUNS,
    );
  });

  it("never gets shorter with depth", () => {
    fc.assert(
      fc.property(soundInputs, between(0, 100), (inputs, more) => {
        const deeper = { ...inputs, mould: { ...inputs.mould, depthMm: inputs.mould.depthMm + more } };
        expect(soundCycle(deeper).cycleSeconds).toBeGreaterThanOrEqual(soundCycle(inputs).cycleSeconds);
      }),
      RUNS,
    );
  });

  it("never gets shorter with a thicker wall or a thicker sheet", () => {
    fc.assert(
      fc.property(soundInputs, between(0, 1), (inputs, more) => {
        const before = soundCycle(inputs).cycleSeconds;
        const thickerSheet = {
          ...inputs,
          sheet: { ...inputs.sheet, thicknessMm: inputs.sheet.thicknessMm + more },
        };
        expect(soundCycle(thickerSheet).cycleSeconds).toBeGreaterThanOrEqual(before);
        const wallThicknessMm = Math.min(inputs.sheet.thicknessMm, inputs.product.wallThicknessMm + more);
        const thickerWall = { ...inputs, product: { ...inputs.product, wallThicknessMm } };
        // stabilising is rounded to microseconds
        expect(soundCycle(thickerWall).cycleSeconds).toBeGreaterThanOrEqual(before - 1e-6);
      }),
      RUNS,
    );
  });

  it("never gets longer with better contact, and ideal contact is the best", () => {
    fc.assert(
      fc.property(soundInputs, between(50, 20_000), between(1, 10), (inputs, conductance, factor) => {
        const stabilise = (contactConductanceWPerM2K: number | null) =>
          soundCycle({ ...inputs, mould: { ...inputs.mould, contactConductanceWPerM2K } }).parts
            .stabiliseSeconds;
        expect(stabilise(conductance * factor)).toBeLessThanOrEqual(stabilise(conductance));
        expect(stabilise(null)).toBeLessThanOrEqual(stabilise(conductance * factor));
      }),
      RUNS,
    );
  });

  it("stabilises in proportion to the calibration factor", () => {
    fc.assert(
      fc.property(soundInputs, between(0.2, 5), (inputs, calibrationFactor) => {
        const stabilise = (factor: number) =>
          soundCycle({ ...inputs, mould: { ...inputs.mould, calibrationFactor: factor } }).parts
            .stabiliseSeconds;
        expect(Math.abs(stabilise(calibrationFactor) - calibrationFactor * stabilise(1))).toBeLessThan(1e-5);
      }),
      RUNS,
    );
  });

  it("lets rim rolling change the cycle only when its own cycle is the slowest", () => {
    let slower = 0;
    fc.assert(
      fc.property(soundInputs, (inputs) => {
        const plain = soundCycle({ ...inputs, product: { ...inputs.product, rimRolled: false } });
        const rolled = soundCycle({ ...inputs, product: { ...inputs.product, rimRolled: true } });
        const ownSeconds = 60 / (inputs.line.rimRollingMaxCyclesPerMin ?? Infinity);
        if (ownSeconds > plain.cycleSeconds) slower++;
        expect(rolled.cycleSeconds).toBe(Math.max(plain.cycleSeconds, ownSeconds));
      }),
      RUNS,
    );
    expect(slower).toBeGreaterThan(10);
    expect(slower).toBeLessThan(290);
  });
});
