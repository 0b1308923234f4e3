import { describe, expect, it } from "vitest";
import { exponential, lognormal, normal } from "./distributions.ts";
import { createRandom, type Random } from "./random.ts";

const DRAWS = 20_000;

function drawn(draw: (random: Random) => number): number[] {
  const random = createRandom(4);
  return Array.from({ length: DRAWS }, () => draw(random));
}

const shareUpTo = (draws: readonly number[], at: number): number =>
  draws.filter((each) => each <= at).length / draws.length;
/** Four and a half standard deviations of a share of so many draws (binomial): about one seed in 150,000 lies outside. */
const bandOf = (share: number): number => 4.5 * Math.sqrt((share * (1 - share)) / DRAWS);

describe("draws of distributions", () => {
  it("have the quantiles of the closed forms", () => {
    // standard normal quantiles by table, from memory; exponential: -ln(1 - p); lognormal: exp(sigma z - sigma² / 2)
    const cv = 1;
    const sigma = Math.sqrt(Math.log(1 + cv * cv));
    for (const [share, z] of [
      [0.05, -1.6449],
      [0.5, 0],
      [0.8, 0.8416],
      [0.95, 1.6449],
    ] as const) {
      const band = bandOf(share);
      expect(Math.abs(shareUpTo(drawn(normal), z) - share)).toBeLessThan(band);
      expect(Math.abs(shareUpTo(drawn(exponential), -Math.log(1 - share)) - share)).toBeLessThan(band);
      const log = drawn(lognormal(cv));
      expect(Math.abs(shareUpTo(log, Math.exp(sigma * z - sigma ** 2 / 2)) - share)).toBeLessThan(band);
    }
    // the band tells a wrong formula: the variation itself taken for sigma moves the median
    const wrong = shareUpTo(drawn(lognormal(cv)), Math.exp(-(cv ** 2) / 2));
    expect(Math.abs(wrong - 0.5)).toBeGreaterThan(bandOf(0.5));
  });
  it("are 1 where nothing varies", () => {
    expect(new Set(drawn(lognormal(0)))).toEqual(new Set([1]));
  });
});
