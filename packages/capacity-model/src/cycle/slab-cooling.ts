import { slabModes, termsFor } from "./slab-modes.ts";
import type { SlabMode } from "./slab-modes.ts";

/**
 * Where the temperature is taken. "mid" is the mid-plane of a sheet cooled from both sides, which is the free surface of
 * one cooled from one side; "mean" is the mean over the thickness.
 */
export type SlabPlace = "mid" | "mean";

/** Below this Fourier number nothing has reached the mid-plane (2·erfc(7) ≈ 1e-22) and the slab is half-infinite. */
const EARLY_FOURIER = 0.005;

/** Below this Fourier number the capped series (`termsFor`) no longer holds every term that counts. */
const LEAST_SERIES_FOURIER = 1e-6;

/**
 * Dimensionless temperature θ = (T − Tw)/(T0 − Tw), 1 at the start, 0 when cold. Fo = a·t/L² ≥ 0 with L half the
 * thickness (two sides) or the whole (one side); `biot` = h·L/k, null for ideal contact. Absolute error below 1e-12 for
 * ideal contact, and below 1e-9 for Fo ≥ 1e-6 with contact conductance
 * (1e-4 below that, where nothing has cooled yet).
 */
export function slabTheta(place: SlabPlace, fourier: number, biot: number | null): number {
  if (fourier <= 0) return 1;
  return thetaOf({ place, fourier, biot, modes: slabModes(biot, termsFor(fourier)) });
}

interface ThetaInput {
  readonly place: SlabPlace;
  readonly fourier: number;
  readonly biot: number | null;
  readonly modes: readonly SlabMode[];
}

function thetaOf({ place, fourier, biot, modes }: ThetaInput): number {
  if (place === "mid") {
    if (fourier < EARLY_FOURIER) return 1;
    return modes.reduce((sum, mode) => sum + mode.midWeight * Math.exp(-mode.zeta * mode.zeta * fourier), 0);
  }
  if (biot === null && fourier < EARLY_FOURIER) return 1 - 2 * Math.sqrt(fourier / Math.PI);
  // the weights add to 1: where the series is cut short, summing what is lost starts from exactly 1
  if (fourier < LEAST_SERIES_FOURIER)
    return (
      1 + modes.reduce((sum, mode) => sum + mode.meanWeight * Math.expm1(-mode.zeta * mode.zeta * fourier), 0)
    );
  return modes.reduce((sum, mode) => sum + mode.meanWeight * Math.exp(-mode.zeta * mode.zeta * fourier), 0);
}

/**
 * Fourier number at which θ falls to `theta` in (0, 1), or 0 for 1 and above. The root is bracketed by proved bounds
 * (below: half-infinite loss 2√(Fo/π), steady flux Bi·Fo, first term of the mean; above: e^−ζ²Fo for the mean, first
 * term for the mid) and closed by secant steps guarded by halving; relative error of Fo below 1e-11.
 */
export function fourierFor(place: SlabPlace, theta: number, biot: number | null): number {
  if (theta >= 1) return 0;
  const { low, high } = bracketOf(place, theta, biot);
  const modes = slabModes(biot, termsFor(low));
  const excess = (fourier: number) => thetaOf({ place, fourier, biot, modes }) - theta;
  return fallingRoot(excess, low, high);
}

/** Least Fourier number at which the mean can have fallen to `theta` by the flux that a contact conductance lets through. */
export function leastFourier(theta: number, biot: number | null): number {
  const lost = 1 - theta;
  const wall = (Math.PI / 4) * lost * lost;
  return biot === null ? wall : Math.max(wall, lost / biot);
}

function bracketOf(
  place: SlabPlace,
  theta: number,
  biot: number | null,
): { readonly low: number; readonly high: number } {
  const [first] = slabModes(biot, 1) as readonly [SlabMode];
  const decay = first.zeta * first.zeta;
  const low = Math.max(leastFourier(theta, biot), Math.log(first.meanWeight / theta) / decay);
  const high = Math.log((place === "mean" ? 1 : first.midWeight) / theta) / decay;
  return { low, high: Math.max(high, low) };
}

/** Root of a falling function in [low, high]: Illinois steps, halving whenever they stall. */
function fallingRoot(f: (x: number) => number, low: number, high: number): number {
  let left = low;
  let right = high;
  let atLeft = f(left);
  let atRight = f(right);
  if (atLeft <= 0) return left;
  if (atRight >= 0) return right;
  for (let step = 0; step < 200 && right - left > 1e-13 * right; step++) {
    const width = right - left;
    const secant = left + (width * atLeft) / (atLeft - atRight);
    for (const x of [secant, left + (right - left) / 2]) {
      if (!(x > left && x < right)) continue;
      const value = f(x);
      if (value === 0) return x;
      if (value > 0) [left, atLeft] = [x, value];
      else [right, atRight] = [x, value];
      if (right - left < width / 2) break;
    }
  }
  return left + (right - left) / 2;
}

/** A sheet or wall cooling against a mould. Temperatures in °C, `startC` > `endC` > `wallC`. */
export interface Cooling {
  readonly thicknessMm: number;
  /** "one": mould on one side, air on the other; "two": cold on both sides. */
  readonly sides: "one" | "two";
  readonly place: SlabPlace;
  readonly diffusivityM2PerS: number;
  readonly conductivityWPerMK: number;
  /** null: ideal contact. */
  readonly contactConductanceWPerM2K: number | null;
  readonly startC: number;
  readonly wallC: number;
  readonly endC: number;
}

/** θ, Biot and the time scale L²/a (seconds) of a cooling. */
export function coolingNumbers(cooling: Cooling): {
  readonly theta: number;
  readonly biot: number | null;
  readonly scaleSeconds: number;
} {
  const lengthM = (cooling.sides === "one" ? cooling.thicknessMm : cooling.thicknessMm / 2) / 1000;
  return {
    theta: (cooling.endC - cooling.wallC) / (cooling.startC - cooling.wallC),
    biot:
      cooling.contactConductanceWPerM2K === null
        ? null
        : (cooling.contactConductanceWPerM2K * lengthM) / cooling.conductivityWPerMK,
    scaleSeconds: (lengthM * lengthM) / cooling.diffusivityM2PerS,
  };
}

/** Seconds until the place named is down to `endC`. Exact series, relative error below 1e-11. */
export function coolingSeconds(cooling: Cooling): number {
  const { theta, biot, scaleSeconds } = coolingNumbers(cooling);
  return fourierFor(cooling.place, theta, biot) * scaleSeconds;
}

/** A body at one temperature with what decides its contact: conductivity W/(m·K), density kg/m³, specific heat J/(kg·K). */
export interface ContactBody {
  readonly temperatureC: number;
  readonly conductivityWPerMK: number;
  readonly densityKgPerM3: number;
  readonly specificHeatJPerKgK: number;
}

/** Temperature of the face at which two thick bodies meet: mean weighted by effusivity √(k·ρ·c) (textbook, from memory). */
export function contactTemperatureC(one: ContactBody, other: ContactBody): number {
  const effusivity = (body: ContactBody) =>
    Math.sqrt(body.conductivityWPerMK * body.densityKgPerM3 * body.specificHeatJPerKgK);
  const a = effusivity(one);
  const b = effusivity(other);
  return (a * one.temperatureC + b * other.temperatureC) / (a + b);
}
