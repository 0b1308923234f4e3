/** Greatest speed and acceleration of a drive, both positive. */
export interface DriveLimits {
  readonly speedMPerS: number;
  readonly accelerationMPerS2: number;
}

/** Seconds to move `distanceM` from rest to rest with a trapezoidal speed, triangular where the top speed is not reached; 0 for no way. Textbook. */
export function trapezoidSeconds(distanceM: number, { speedMPerS, accelerationMPerS2 }: DriveLimits): number {
  return distanceM * accelerationMPerS2 >= speedMPerS * speedMPerS
    ? distanceM / speedMPerS + speedMPerS / accelerationMPerS2
    : 2 * Math.sqrt(distanceM / accelerationMPerS2);
}

/** Motion laws of cams and servo drives, rest to rest. */
export type CamLaw = "modified sine" | "modified trapezoid" | "cycloidal" | "constant acceleration";

/**
 * Peak speed and acceleration of a law over those of a unit move in unit time: v = Cv·h/t, a = Ca·h/t².
 * Closed forms; Cv 1.76, Ca 5.53 of the modified sine agree with a public cam-design page. The modified trapezoid's
 * Ca 4.888 = 8π/(2 + π) and the cycloid's 2π: Norton, cam design, and VDI 2143 (from memory).
 */
export const CAM_LAWS: Readonly<
  Record<CamLaw, { readonly speedFactor: number; readonly accelerationFactor: number }>
> = {
  "modified sine": {
    speedFactor: (4 * Math.PI) / (Math.PI + 4),
    accelerationFactor: (4 * Math.PI * Math.PI) / (Math.PI + 4),
  },
  "modified trapezoid": { speedFactor: 2, accelerationFactor: (8 * Math.PI) / (2 + Math.PI) },
  cycloidal: { speedFactor: 2, accelerationFactor: 2 * Math.PI },
  "constant acceleration": { speedFactor: 2, accelerationFactor: 4 },
};

/** Seconds and peak speed of a move by a law whose acceleration peaks at the limit; both 0 for no way. */
export function camMove(
  law: CamLaw,
  distanceM: number,
  accelerationMPerS2: number,
): { readonly seconds: number; readonly peakSpeedMPerS: number } {
  const { speedFactor, accelerationFactor } = CAM_LAWS[law];
  const seconds = Math.sqrt((accelerationFactor * distanceM) / accelerationMPerS2);
  return { seconds, peakSpeedMPerS: seconds === 0 ? 0 : (speedFactor * distanceM) / seconds };
}
