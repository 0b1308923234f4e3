import type { Impossible } from "./cycle-fault.ts";
import { machineCycle } from "./machine-cycle.ts";
import type { CycleInputs } from "./machine-cycle.ts";

/** What one measured rate says about a mould's calibration factor. */
export type Calibration =
  | {
      readonly kind: "factor";
      /** Factor with which the computed station cycle meets the measured one. */
      readonly calibrationFactor: number;
      readonly measuredStabiliseSeconds: number;
      readonly idealStabiliseSeconds: number;
    }
  | {
      readonly kind: "unusable";
      readonly code: "faster-than-parts" | "held-by-another-limit" | "nothing-to-stabilise";
      readonly cause: string;
      readonly remedy: string;
    };

/**
 * Calibration factor of a mould from a rate measured in full run. Usable only when nothing but the station can have held
 * the measured cycle, and when it leaves time to stabilise between forming, trimming and the open time.
 */
export function calibrationFrom(inputs: CycleInputs, measuredCyclesPerMin: number): Calibration | Impossible {
  const ideal = machineCycle({ ...inputs, mould: { ...inputs.mould, calibrationFactor: 1 } });
  if (ideal.kind === "impossible") return ideal;
  const measuredSeconds = 60 / measuredCyclesPerMin;
  const { formSeconds, trimSeconds, stabiliseSeconds, open } = ideal.parts;
  const left = measuredSeconds - formSeconds - trimSeconds - open.openSeconds;
  if (left <= 0)
    return {
      kind: "unusable",
      code: "faster-than-parts",
      cause: `A measured cycle of ${measuredSeconds.toFixed(2)} s leaves no time to stabilise beside forming, trimming and the open time.`,
      remedy: "Measure again, or correct the forming and trimming times or the line's open time.",
    };
  if (stabiliseSeconds === 0)
    return {
      kind: "unusable",
      code: "nothing-to-stabilise",
      cause:
        "The computed stabilising time is below a microsecond, so no factor on it can explain a measured cycle.",
      remedy: "Check the wall thickness and the forming and demoulding temperatures.",
    };
  // two per cent: what a stopwatch over some ten cycles can tell apart
  const other = ideal.limits.find(
    (limit) => limit.code !== "station" && limit.cycleSeconds >= measuredSeconds * 0.98,
  );
  if (other !== undefined)
    return {
      kind: "unusable",
      code: "held-by-another-limit",
      cause: `Another limit explains the measured cycle: ${other.sentence}`,
      remedy: "Measure on a line or sheet where this limit is well away.",
    };
  return {
    kind: "factor",
    calibrationFactor: left / stabiliseSeconds,
    measuredStabiliseSeconds: left,
    idealStabiliseSeconds: stabiliseSeconds,
  };
}
