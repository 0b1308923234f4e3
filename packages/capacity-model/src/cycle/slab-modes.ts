/** One term of the series for a cooling slab: weights for the mid-plane and for the mean, and the eigenvalue ζ. */
export interface SlabMode {
  readonly zeta: number;
  readonly midWeight: number;
  readonly meanWeight: number;
}

/** Terms beyond this many change nothing that matters (see `termsFor`). */
const MOST_TERMS = 2000;

/**
 * Eigenvalue number n (from 0) of ζ·tan ζ = Bi, in (nπ, nπ + π/2), relative error below 1e-14.
 * f(ζ) = ζ − nπ − atan(Bi/ζ) rises and is concave, so Newton from a point left of the root climbs to it without
 * overshoot. The start for n = 0 is Dunkerley's bound 1/ζ² ≤ 1/Bi + 4/π². `biot` at least 1e-6.
 */
export function slabEigenvalue(n: number, biot: number): number {
  const base = n * Math.PI;
  const start =
    n === 0
      ? 1 / Math.sqrt(1 / biot + 4 / (Math.PI * Math.PI))
      : base + Math.atan(biot / (base + Math.PI / 2));
  let zeta = start;
  for (let step = 0; step < 60; step++) {
    const value = zeta - base - Math.atan(biot / zeta);
    const move = value / (1 + biot / (zeta * zeta + biot * biot));
    zeta -= move;
    if (Math.abs(move) <= 1e-15 * zeta) break;
  }
  return zeta;
}

/** Terms after which exp(−ζ²·Fo) is below e^−40; capped, so below Fo 1e-6 the truncation reaches 1e-4 of theta. */
export function termsFor(fourier: number): number {
  return Math.min(MOST_TERMS, Math.ceil(Math.sqrt(40 / Math.max(fourier, 1e-12)) / Math.PI) + 2);
}

/**
 * The first `count` terms of the series. `biot` null is ideal contact (wall temperature imposed, Bi → ∞).
 * Carslaw and Jaeger, *Conduction of Heat in Solids*, and Incropera, *Fundamentals of Heat and Mass Transfer*, plane
 * wall with convection (from memory, re-derived): C = 4 sin ζ / (2ζ + sin 2ζ), mean weight C·sin ζ/ζ.
 */
export function slabModes(biot: number | null, count: number): readonly SlabMode[] {
  return Array.from({ length: count }, (_, n) => (biot === null ? idealMode(n) : contactMode(n, biot)));
}

function idealMode(n: number): SlabMode {
  const zeta = (n + 0.5) * Math.PI;
  return { zeta, midWeight: ((n % 2 === 0 ? 1 : -1) * 2) / zeta, meanWeight: 2 / (zeta * zeta) };
}

function contactMode(n: number, biot: number): SlabMode {
  const zeta = slabEigenvalue(n, biot);
  const midWeight = (4 * Math.sin(zeta)) / (2 * zeta + Math.sin(2 * zeta));
  // C·sin ζ/ζ without the cancellation that sin 2ζ would bring at high n
  return {
    zeta,
    midWeight,
    meanWeight: (2 * biot * biot) / (zeta * zeta * (biot * biot + biot + zeta * zeta)),
  };
}
