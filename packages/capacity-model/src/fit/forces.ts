import type { Mould } from "../plant/mould.ts";
import type { Polymer } from "../plant/polymer.ts";

/** Length of cut of one stroke, all cavities, mm. */
export function cutLengthMm(
  mould: Pick<Mould, "cavitiesAlong" | "cavitiesAcross" | "cutLengthPerCavityMm">,
): number {
  return mould.cavitiesAlong * mould.cavitiesAcross * mould.cutLengthPerCavityMm;
}

/** A cut: total length, sheet thickness, shear strength at room temperature, and the share of it left when trimmed warm. */
export interface Cut {
  readonly cutLengthMm: number;
  readonly thicknessMm: number;
  readonly shearStrengthMpa: Polymer["shearStrengthMpa"];
  /** 1 for cold trimming. */
  readonly hotFactor: number;
}

/**
 * Force of a punch-and-die cut, kN: length × thickness × shear strength × warm factor, square shear. A knife on an anvil
 * follows its wedge instead; measure that. ASTM D732 warns that the strength is not independent of thickness.
 */
export function trimForceKn({ cutLengthMm: length, thicknessMm, shearStrengthMpa, hotFactor }: Cut): number {
  return (length * thicknessMm * shearStrengthMpa * hotFactor) / 1000;
}

/** Force with which forming air pushes the tool apart, kN: 1 bar on 1 cm² is 10 N. */
export function formingAirForceKn(pressureBar: number, pressurisedAreaCm2: number): number {
  return (pressureBar * pressurisedAreaCm2) / 100;
}

/** Weight of so many tonnes, kN, by standard gravity 9.80665 m/s² (ISO 80000-3); tonnes are how presses are often rated. */
export function tonnesForceKn(tonnes: number): number {
  return tonnes * 9.80665;
}
