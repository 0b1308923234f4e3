import { exactExp, exactLog } from "./exact-log.ts";
import type { Random } from "./random.ts";

/** Uniform in (0, 1): never the ends. */
function inside(random: Random): number {
  return random.unit() + 1 / 8_589_934_592;
}

/** A draw of the exponential distribution with mean 1, by inversion. */
export function exponential(random: Random): number {
  return -exactLog(inside(random));
}

/** A draw of the standard normal distribution: Marsaglia's polar method (from memory), which needs no trigonometry. */
export function normal(random: Random): number {
  for (;;) {
    const x = 2 * inside(random) - 1;
    const y = 2 * inside(random) - 1;
    const square = x * x + y * y;
    if (square < 1 && square > 0) return x * Math.sqrt((-2 * exactLog(square)) / square);
  }
}

/**
 * Draws of the lognormal distribution with mean 1 and the coefficient of variation given: exp(sigma × normal - sigma² / 2) with
 * sigma² = ln(1 + cv²) (any textbook of probability; from memory). Always 1 at 0.
 */
export function lognormal(cv: number): (random: Random) => number {
  if (cv === 0) return () => 1;
  const variance = exactLog(1 + cv * cv);
  const sigma = Math.sqrt(variance);
  return (random) => exactExp(sigma * normal(random) - variance / 2);
}
