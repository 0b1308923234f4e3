import { describe, expect, it } from "vitest";
import { contactTemperatureC, coolingSeconds, fourierFor, slabTheta } from "./slab-cooling.ts";
import type { Cooling } from "./slab-cooling.ts";
import { slabEigenvalue, slabModes } from "./slab-modes.ts";

const PP_WALL: Cooling = {
  thicknessMm: 0.5,
  sides: "one",
  place: "mean",
  diffusivityM2PerS: 9e-8,
  conductivityWPerMK: 0.2,
  contactConductanceWPerM2K: null,
  startC: 160,
  wallC: 20,
  endC: 70,
};

describe("slab series against closed forms and tables", () => {
  it("CV-15 slab series at Fo 0.2, 0.5 and 1.0", () => {
    // Carslaw and Jaeger series, derived; absolute tolerance 5e-5
    const rows = [
      [0.2, 0.77231, 0.49591],
      [0.5, 0.37078, 0.23605],
      [1.0, 0.10798, 0.06874],
    ] as const;
    for (const [fourier, mid, mean] of rows) {
      expect(Math.abs(slabTheta("mid", fourier, null) - mid)).toBeLessThan(5e-5);
      expect(Math.abs(slabTheta("mean", fourier, null) - mean)).toBeLessThan(5e-5);
    }
  });

  it("holds the whole printed series, small Fourier numbers too", () => {
    // derived table of the exact series to five decimals
    const rows = [
      [0.01, 1, 0.88716],
      [0.05, 0.99687, 0.74769],
      [0.1, 0.94931, 0.64318],
      [0.3, 0.6068, 0.38676],
      [0.4, 0.47449, 0.30212],
      [0.6, 0.28971, 0.18444],
      [0.8, 0.17687, 0.1126],
      [1.5, 0.03144, 0.02002],
      [2, 0.00916, 0.00583],
    ] as const;
    for (const [fourier, mid, mean] of rows) {
      expect(Math.abs(slabTheta("mid", fourier, null) - mid)).toBeLessThan(6e-6);
      expect(Math.abs(slabTheta("mean", fourier, null) - mean)).toBeLessThan(6e-6);
    }
  });

  it("differs from the one-term formula as much as handbooks say below Fo 0.2", () => {
    // one term of the mid-plane series, derived: 0.77731 at Fo 0.2 (+0.6 %), 0.99484 at Fo 0.1 (+4.8 %)
    const oneTerm = (fourier: number) => (4 / Math.PI) * Math.exp(-((Math.PI * Math.PI) / 4) * fourier);
    expect(oneTerm(0.2) / slabTheta("mid", 0.2, null) - 1).toBeCloseTo(0.006, 3);
    expect(oneTerm(0.1) / slabTheta("mid", 0.1, null) - 1).toBeCloseTo(0.048, 3);
  });

  it("CV-16 Biot eigenvalue", () => {
    // Incropera, Fundamentals of Heat and Mass Transfer, Table 5.1 (from memory); absolute tolerance 1e-4
    const rows = [
      [0.1, 0.3111, 1.0161],
      [0.5, 0.6533, 1.0701],
      [1, 0.8603, 1.1191],
      [2, 1.0769, 1.1785],
      [5, 1.3138, 1.2402],
      [10, 1.4289, 1.262],
      [100, 1.5552, 1.2731],
    ] as const;
    for (const [biot, zeta, weight] of rows) {
      const [first] = slabModes(biot, 1);
      expect(Math.abs((first?.zeta ?? NaN) - zeta)).toBeLessThan(1e-4);
      expect(Math.abs((first?.midWeight ?? NaN) - weight)).toBeLessThan(1e-4);
    }
  });

  it("solves ζ·tan ζ = Bi for every mode, and the mean weights add to 1", () => {
    for (const biot of [1e-4, 0.03, 0.7, 4, 60, 5000]) {
      for (const n of [0, 1, 2, 10, 100]) {
        const zeta = slabEigenvalue(n, biot);
        expect(zeta).toBeGreaterThan(n * Math.PI);
        expect(zeta).toBeLessThan((n + 0.5) * Math.PI);
        expect(Math.abs(zeta * Math.sin(zeta) - biot * Math.cos(zeta))).toBeLessThan(1e-11 * (zeta + biot));
      }
      const sum = slabModes(biot, 2000).reduce((total, mode) => total + mode.meanWeight, 0);
      expect(Math.abs(sum - 1)).toBeLessThan(2e-4);
    }
  });

  it("goes over into ideal contact as the conductance grows and into uniform cooling as it vanishes", () => {
    for (const fourier of [0.02, 0.3, 1])
      expect(Math.abs(slabTheta("mean", fourier, 1e7) - slabTheta("mean", fourier, null))).toBeLessThan(1e-5);
    // lumped body: θ = exp(−Bi·Fo), textbook, right to O(Bi)
    expect(Math.abs(slabTheta("mean", 500, 0.001) - Math.exp(-0.5))).toBeLessThan(1e-3);
  });

  it("starts at 1, falls without a step where the early form takes over, and never turns", () => {
    for (const place of ["mid", "mean"] as const)
      for (const biot of [null, 0.5, 8]) {
        expect(slabTheta(place, 0, biot)).toBe(1);
        const thetas = [1e-7, 1e-6, 1e-5, 1e-4, 0.0049999, 0.0050001, 0.01, 0.05, 0.2, 1, 3].map((fo) =>
          slabTheta(place, fo, biot),
        );
        thetas
          .slice(1)
          .forEach((theta, i) => expect(theta).toBeLessThanOrEqual((thetas[i] as number) + 1e-12));
        expect(Math.abs((thetas[4] as number) - (thetas[5] as number))).toBeLessThan(1e-4);
      }
  });
});

describe("slab series against finite differences", () => {
  it.each([null, 0.2, 1, 2.5, 5, 40])("Crank–Nicolson agrees at Bi %s", (biot) => {
    // independent numerical solution written beside this test; its own error on this grid is below 2e-4
    for (const fourier of [0.01, 0.05, 0.1, 0.2, 0.5, 1, 2]) {
      const numeric = finiteDifferenceSlab({ fourier, biot, cells: 200, steps: 2000 });
      expect(Math.abs(slabTheta("mean", fourier, biot) - numeric.mean)).toBeLessThan(3e-4);
      expect(Math.abs(slabTheta("mid", fourier, biot) - numeric.mid)).toBeLessThan(3e-4);
    }
  });
});

describe("cooling times", () => {
  it("CV-12 cooling two-sided, mid-plane and mean", () => {
    // standard moulding formula (mid-plane, 4/π) read on a moulding engineer's page; mean version derived
    const moulding: Cooling = {
      ...PP_WALL,
      thicknessMm: 2,
      sides: "two",
      place: "mid",
      diffusivityM2PerS: 8.5e-8,
      startC: 220,
      wallC: 40,
      endC: 80,
    };
    expect(Math.abs(coolingSeconds(moulding) / 8.323 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(coolingSeconds({ ...moulding, place: "mean" }) / 6.17 - 1)).toBeLessThan(1e-3);
  });

  it("CV-13 cooling one-sided, mean and free surface", () => {
    // derived from the series
    expect(Math.abs(coolingSeconds(PP_WALL) / 0.923 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(coolingSeconds({ ...PP_WALL, place: "mid" }) / 1.431 - 1)).toBeLessThan(1e-3);
  });

  it("CV-14 one side takes as long as two sides at twice the thickness, four times longer than two at the same", () => {
    // derived: only L² differs
    const twoSided: Cooling = { ...PP_WALL, sides: "two" };
    expect(coolingSeconds(PP_WALL)).toBe(coolingSeconds({ ...twoSided, thicknessMm: 1 }));
    expect(coolingSeconds(PP_WALL) / coolingSeconds(twoSided)).toBeCloseTo(4, 12);
  });

  it("CV-19 contact temperature", () => {
    // effusivity rule, derived; 0.1 K
    const pp = { temperatureC: 160, conductivityWPerMK: 0.2, densityKgPerM3: 905, specificHeatJPerKgK: 2000 };
    const aluminium = {
      temperatureC: 20,
      conductivityWPerMK: 160,
      densityKgPerM3: 2700,
      specificHeatJPerKgK: 900,
    };
    const steel = {
      temperatureC: 20,
      conductivityWPerMK: 30,
      densityKgPerM3: 7800,
      specificHeatJPerKgK: 480,
    };
    expect(Math.abs(contactTemperatureC(pp, aluminium) - 24.1)).toBeLessThan(0.1);
    expect(Math.abs(contactTemperatureC(pp, steel) - 27.5)).toBeLessThan(0.1);
  });

  it("meets the other worked coolings", () => {
    // derived table: HIPS, APET and thicker PP walls; and PP 0.5 mm through 1000 and 2000 W/(m²K)
    const rows = [
      [{ ...PP_WALL, thicknessMm: 0.6 }, 1.329],
      [{ ...PP_WALL, thicknessMm: 1 }, 3.691],
      [{ ...PP_WALL, startC: 140, wallC: 30, endC: 75 }, 0.77],
      [{ ...PP_WALL, thicknessMm: 0.4, startC: 110, wallC: 20, endC: 60 }, 0.433],
      [{ ...PP_WALL, contactConductanceWPerM2K: 1000 }, 2.09],
      [{ ...PP_WALL, contactConductanceWPerM2K: 2000 }, 1.51],
    ] as const;
    for (const [cooling, seconds] of rows)
      expect(Math.abs(coolingSeconds(cooling) / seconds - 1)).toBeLessThan(2e-3);
  });

  it("inverts the series to 1e-10 for every place, contact and depth of cooling", () => {
    for (const place of ["mid", "mean"] as const)
      for (const biot of [null, 0.01, 0.5, 3, 200])
        for (const theta of [0.999, 0.9, 0.5, 0.1, 0.001]) {
          const fourier = fourierFor(place, theta, biot);
          expect(Math.abs(slabTheta(place, fourier, biot) - theta)).toBeLessThan(1e-10);
        }
    expect(fourierFor("mean", 1, null)).toBe(0);
  });
});

/**
 * Slab cooled at x = 0 (the mould), insulated at x = 1, from θ = 1: Crank–Nicolson on a uniform grid, started with a few
 * fully implicit steps so that the jump at the wall does not ring. Shares nothing with the series that it judges.
 * `biot` null holds the wall at 0.
 */
function finiteDifferenceSlab(grid: {
  readonly fourier: number;
  readonly biot: number | null;
  readonly cells: number;
  readonly steps: number;
}): { readonly mean: number; readonly mid: number } {
  const { fourier, biot, cells, steps } = grid;
  const dx = 1 / cells;
  const dt = fourier / steps;
  let theta = Array.from({ length: cells + 1 }, () => 1);
  if (biot === null) theta[0] = 0;
  for (let step = 0; step < steps; step++)
    theta = advance(theta, { dx, dt, biot, implicit: step < 8 ? 1 : 0.5 });
  const inner = theta.reduce((sum, value) => sum + value, 0);
  const ends = (theta[0] as number) + (theta[cells] as number);
  return { mean: (inner - ends / 2) * dx, mid: theta[cells] as number };
}

interface Step {
  readonly dx: number;
  readonly dt: number;
  readonly biot: number | null;
  /** Weight of the new time level: 1 fully implicit, 0.5 Crank–Nicolson. */
  readonly implicit: number;
}

/** One time step by the Thomas algorithm; half cells at both ends carry the boundary fluxes. */
function advance(theta: readonly number[], { dx, dt, biot, implicit }: Step): number[] {
  const last = theta.length - 1;
  const r = dt / (dx * dx);
  const at = (i: number) => theta[i] as number;
  const flow = (i: number) => {
    if (i === 0) return biot === null ? 0 : 2 * (at(1) - at(0)) - 2 * dx * biot * at(0);
    if (i === last) return 2 * (at(last - 1) - at(last));
    return at(i - 1) - 2 * at(i) + at(i + 1);
  };
  const w = r * implicit;
  const sweepUpper: number[] = [];
  const sweepRight: number[] = [];
  for (let i = 0; i <= last; i++) {
    const fixed = i === 0 && biot === null;
    const lower = i === 0 ? 0 : i === last ? -2 * w : -w;
    const upper = fixed || i === last ? 0 : i === 0 ? -2 * w : -w;
    const diagonal = fixed ? 1 : 1 + 2 * w + (i === 0 ? 2 * w * dx * (biot ?? 0) : 0);
    const right = at(i) + r * (1 - implicit) * flow(i);
    const pivot = diagonal - lower * (sweepUpper[i - 1] ?? 0);
    sweepUpper.push(upper / pivot);
    sweepRight.push((right - lower * (sweepRight[i - 1] ?? 0)) / pivot);
  }
  const next = [...sweepRight];
  for (let i = last - 1; i >= 0; i--)
    next[i] = (sweepRight[i] as number) - (sweepUpper[i] as number) * (next[i + 1] as number);
  return next;
}
