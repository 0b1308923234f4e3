import { beforeAll, describe, expect, it } from "vitest";
import { plantSeeds, solveSmallPlant, type SmallPlantResult } from "../fixtures/exact/small-plants.ts";

/**
 * Fifty small plants with a proof: the exact search is written apart from the engine, from the problem's contract alone, and its
 * plans pass the audit. Between bound and engine lies the optimum, always.
 */
describe("fifty small plants under all rules of lines, moulds, team, sheets and pins", () => {
  let rows: readonly SmallPlantResult[] = [];
  beforeAll(() => {
    rows = plantSeeds(50).map((seed) => solveSmallPlant(seed, { steps: 100_000, seed: 1 }));
  }, 600_000);
  it("have exact plans that the audit passes", () => {
    expect(rows.flatMap(({ seed, faults }) => faults.map((text) => `${seed}: ${text}`))).toEqual([]);
  });
  it("are never planned below the optimum, nor bounded above it", () => {
    for (const { seed, engine, exact, bound } of rows) {
      expect(engine, `engine on plant ${seed}`).toBeGreaterThanOrEqual(exact - 1e-4);
      expect(bound, `bound on plant ${seed}`).toBeLessThanOrEqual(exact + 1e-4);
    }
  });
  it("have a bound that lies 15 % below the optimum on average, or less", () => {
    expect(rows.reduce((sum, { gap }) => sum + gap, 0) / rows.length).toBeLessThanOrEqual(0.15);
  });
  it("are all planned at the optimum", () => {
    expect(rows.filter(({ isBest }) => !isBest).map(({ seed }) => seed)).toEqual([]);
  });
});
