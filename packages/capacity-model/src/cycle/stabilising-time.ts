import type { Mould } from "../plant/mould.ts";
import type { Polymer } from "../plant/polymer.ts";
import type { CycleFault } from "./cycle-fault.ts";
import { coolingNumbers, coolingSeconds, leastFourier } from "./slab-cooling.ts";
import type { Cooling } from "./slab-cooling.ts";

/** Longest time, seconds, for which a cycle still means anything on a forming line. */
export const LONGEST_CYCLE_SECONDS = 3600;

/** What the stabilising time is made from; the wall is the thickest section that must keep its form. */
export interface Stabilising {
  readonly wallThicknessMm: number;
  readonly polymer: Polymer;
  readonly mould: Pick<Mould, "calibrationFactor" | "contactConductanceWPerM2K">;
}

/** Temperatures in the wrong order; empty when they can be stabilised. */
export function stabilisingFaults({ polymer }: Stabilising): readonly CycleFault[] {
  const { formingTemperatureC, demouldMeanTemperatureC, mouldTemperatureC } = polymer;
  const numbers = { formingTemperatureC, demouldMeanTemperatureC, mouldTemperatureC };
  const faults: CycleFault[] = [];
  if (formingTemperatureC <= demouldMeanTemperatureC)
    faults.push({
      code: "forming-not-above-demould",
      cause: `${polymer.name}: the forming temperature ${formingTemperatureC} °C is not above the demoulding temperature ${demouldMeanTemperatureC} °C.`,
      remedy: "Correct the forming or the demoulding temperature of the material.",
      numbers,
    });
  if (demouldMeanTemperatureC <= mouldTemperatureC)
    faults.push({
      code: "demould-not-above-mould",
      cause: `${polymer.name}: the product can never cool to ${demouldMeanTemperatureC} °C in a mould at ${mouldTemperatureC} °C.`,
      remedy: "Lower the mould temperature or raise the demoulding temperature of the material.",
      numbers,
    });
  return faults;
}

/**
 * Seconds against the mould until the mean over the wall is down to the demoulding temperature, cooled from the mould's
 * side only, times the mould's calibration factor. Rounded to whole microseconds, so that the last digit of exp cannot
 * differ between machines. Infinity where the contact lets through so little heat that the hour is passed for sure.
 * Call it only when `stabilisingFaults` is empty.
 */
export function stabilisingSeconds(stabilising: Stabilising): number {
  const cooling = coolingOf(stabilising);
  const { theta, biot, scaleSeconds } = coolingNumbers(cooling);
  const factor = stabilising.mould.calibrationFactor;
  if (leastFourier(theta, biot) * scaleSeconds * factor > LONGEST_CYCLE_SECONDS) return Infinity;
  return Math.round(factor * coolingSeconds(cooling) * 1e6) / 1e6;
}

function coolingOf({ wallThicknessMm, polymer, mould }: Stabilising): Cooling {
  return {
    thicknessMm: wallThicknessMm,
    sides: "one",
    place: "mean",
    diffusivityM2PerS: polymer.coolingDiffusivityM2PerS,
    conductivityWPerMK: polymer.conductivityWPerMK,
    contactConductanceWPerM2K: mould.contactConductanceWPerM2K,
    startC: polymer.formingTemperatureC,
    wallC: polymer.mouldTemperatureC,
    endC: polymer.demouldMeanTemperatureC,
  };
}
