import { describe, expect, it } from "vitest";
import { exactExp, exactLog, exponentialDraws } from "./exact-log.ts";
import { createRandom } from "./random.ts";

describe("logarithm and exponential by plain arithmetic", () => {
  it("agree with the built-in ones", () => {
    for (const value of [1e-12, 0.003, 0.5, 1, 1.5, 2, 1234.5, 8e15]) {
      expect(Math.abs(exactLog(value) - Math.log(value))).toBeLessThan(
        1e-13 * Math.max(1, Math.abs(Math.log(value))),
      );
    }
    for (const power of [-50, -7.3, -0.1, 0, 0.4, 12.5, 100]) {
      expect(exactExp(power) / Math.exp(power)).toBeCloseTo(1, 12);
    }
  });
  it("take the limits that the built-in ones take", () => {
    expect(exactLog(0)).toBe(-Infinity);
    expect(exactExp(0)).toBe(1);
  });
  it("give exponential draws of mean 1", () => {
    const draws = exponentialDraws();
    expect(draws.reduce((sum, draw) => sum + draw, 0) / draws.length).toBeCloseTo(1, 3);
    expect(Math.min(...draws)).toBeGreaterThan(0);
  });
});

describe("the seeded random numbers", () => {
  it("repeat for a seed, differ between seeds, and spread evenly", () => {
    const draw = (seed: number): number[] => {
      const random = createRandom(seed);
      return Array.from({ length: 6000 }, () => random.below(6));
    };
    expect(draw(5)).toEqual(draw(5));
    expect(draw(5)).not.toEqual(draw(6));
    const counts = [0, 1, 2, 3, 4, 5].map((face) => draw(7).filter((value) => value === face).length);
    // chi-square with 5 degrees of freedom: above 20.5 once in a thousand (standard table, from memory)
    const chiSquare = counts.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
    expect(chiSquare).toBeLessThan(20.5);
  });
});
