import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { everyPartEvery } from "./every-part-every.ts";
import { keyFiguresOf } from "./key-figures.ts";
import { NOTHING_PRODUCED, sumOfRecords } from "./production-record.ts";
import type { ProductionRecord } from "./production-record.ts";

const shift: ProductionRecord = {
  plannedBusySeconds: 450 * 60,
  productionSeconds: 360 * 60,
  setupSeconds: 40 * 60,
  delaySeconds: 50 * 60,
  busySeconds: 450 * 60,
  executionSeconds: 500 * 60,
  plannedSecondsPerPiece: 60 / 1080,
  producedPieces: 360_000,
  goodPieces: 352_800,
  scrapPieces: 7_200,
  plannedScrapPieces: 3_600,
};

describe("key figures", () => {
  it("CV-49 gives the worked example's figures", () => {
    // Source: formulas of ISO 22400-2 as in a public ontology and OPC 40501-1 annex C; 36 cavities at 30 cycles/min, derived.
    const figures = keyFiguresOf(shift);
    expect(figures.availability).toBeCloseTo(0.8, 4);
    expect(figures.effectiveness).toBeCloseTo(0.9259, 4);
    expect(figures.qualityRatio).toBeCloseTo(0.98, 4);
    expect(figures.oeeIndex).toBeCloseTo(0.7259, 4);
    expect(figures.neeIndex).toBeCloseTo(0.8066, 4);
    expect(figures.technicalEfficiency).toBeCloseTo(0.878, 4);
    expect(figures.setupRatio).toBeCloseTo(0.1, 4);
    expect(figures.utilisationEfficiency).toBeCloseTo(0.8, 4);
    expect(figures.allocationEfficiency).toBe(1);
    expect(figures.scrapRatio).toBeCloseTo(0.02, 9);
    expect(figures.actualToPlannedScrap).toBe(2);
    expect(figures.throughputPerHour).toBeCloseTo(43_200, 6);
    expect(figures.allocationRatio).toBeCloseTo(0.9, 9);
    expect(figures.productionProcessRatio).toBeCloseTo(0.72, 9);
  });

  it("CV-50 makes availability × effectiveness × quality the planned time of good pieces over the busy time", () => {
    // Source: identity of the ISO 22400-2 formulas.
    const count = fc.integer({ min: 1, max: 10_000_000 });
    fc.assert(
      fc.property(count, count, count, count, (busy, production, produced, scrap) => {
        const goodPieces = Math.max(0, produced - scrap);
        const record = {
          ...shift,
          plannedBusySeconds: busy,
          productionSeconds: production,
          producedPieces: produced,
          goodPieces,
        };
        const whole = (goodPieces * record.plannedSecondsPerPiece) / busy;
        expect(Math.abs((keyFiguresOf(record).oeeIndex ?? Number.NaN) - whole)).toBeLessThanOrEqual(
          1e-12 * Math.max(1, whole),
        );
      }),
    );
  });

  it("says nothing where there is nothing to divide by", () => {
    expect(new Set(Object.values(keyFiguresOf(NOTHING_PRODUCED)))).toEqual(new Set([null]));
  });

  it("stays the same for equal records added up", () => {
    const one = keyFiguresOf(shift);
    const three = keyFiguresOf(sumOfRecords([shift, shift, shift]));
    expect(three.oeeIndex).toBeCloseTo(one.oeeIndex ?? Number.NaN, 12);
    expect(three.setupRatio).toBeCloseTo(one.setupRatio ?? Number.NaN, 12);
    expect(sumOfRecords([])).toEqual(NOTHING_PRODUCED);
  });
});

describe("every part every interval", () => {
  it("CV-58 finds changes a week and weeks a round", () => {
    // Source: definition in lean practice texts; 102 h available, 94 h running, 1.5 h a change, 5 products, derived.
    const mix = { availableHours: 120 * 0.85, runHours: 94, changeHours: 1.5, products: 5 };
    expect(everyPartEvery(mix).changesPerPeriod).toBeCloseTo(16 / 3, 12);
    expect(everyPartEvery(mix).periods).toBeCloseTo(0.9375, 12);
    expect(everyPartEvery({ ...mix, runHours: 110 })).toEqual({ changesPerPeriod: 0, periods: null });
  });
});
