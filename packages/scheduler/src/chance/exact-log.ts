/**
 * Logarithm and exponential by sums, products and quotients alone. The built-in ones may differ in the last bit from one
 * machine to another, which would break "same seed, same plan".
 */

const LN2 = 0.6931471805599453;

/** Natural logarithm of a positive number, to about 1e-15; `-Infinity` at 0. */
export function exactLog(value: number): number {
  if (!(value > 0)) return -Infinity;
  let mantissa = value;
  let exponent = 0;
  while (mantissa > 1.4142135623730951) {
    mantissa /= 2;
    exponent++;
  }
  while (mantissa < 0.7071067811865476) {
    mantissa *= 2;
    exponent--;
  }
  // ln m = 2 artanh((m - 1) / (m + 1)), a fast series near 1
  const ratio = (mantissa - 1) / (mantissa + 1);
  const square = ratio * ratio;
  let power = ratio;
  let sum = 0;
  for (let odd = 1; odd < 25; odd += 2) {
    sum += power / odd;
    power *= square;
  }
  return 2 * sum + exponent * LN2;
}

/** e to the given power (|power| < 700), to about 1e-14. */
export function exactExp(power: number): number {
  const halvings = Math.round(power / LN2);
  const rest = power - halvings * LN2;
  let term = 1;
  let sum = 1;
  for (let n = 1; n < 18; n++) {
    term *= rest / n;
    sum += term;
  }
  let scale = 1;
  for (let i = 0; i < Math.abs(halvings); i++) scale *= 2;
  return halvings < 0 ? sum / scale : sum * scale;
}

/** `-ln u` at the middles of 4,096 equal cells of (0, 1): draws of an exponential distribution by table. */
export function exponentialDraws(): Float64Array {
  const draws = new Float64Array(4096);
  for (let cell = 0; cell < 4096; cell++) draws[cell] = -exactLog((cell + 0.5) / 4096);
  return draws;
}
