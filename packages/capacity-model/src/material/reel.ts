/** A reel of sheet as it stands in the store. Diameters and the rest in the units of the names, all positive. */
export interface Reel {
  readonly outerDiameterMm: number;
  /** Diameter of the core on which it is wound; below the outer one. */
  readonly coreDiameterMm: number;
  readonly thicknessMm: number;
  readonly widthMm: number;
  readonly densityKgPerM3: number;
}

/** Metres of sheet on a reel: area of the wound ring over thickness, wound without air. 0 when nothing is wound. */
export function reelLengthM(reel: Reel): number {
  const ringMm2 =
    (Math.PI / 4) * (reel.outerDiameterMm * reel.outerDiameterMm - reel.coreDiameterMm * reel.coreDiameterMm);
  return Math.max(0, ringMm2 / reel.thicknessMm / 1000);
}

/** Kilograms of sheet on a reel, core apart. */
export function reelMassKg(reel: Reel): number {
  return reelLengthM(reel) * (reel.widthMm / 1000) * (reel.thicknessMm / 1000) * reel.densityKgPerM3;
}

/** Metres of sheet in a reel known by its mass, as the sheet's record holds it. */
export function lengthOfMassM(sheet: {
  readonly massKg: number;
  readonly thicknessMm: number;
  readonly widthMm: number;
  readonly densityKgPerM3: number;
}): number {
  return sheet.massKg / ((sheet.widthMm / 1000) * (sheet.thicknessMm / 1000) * sheet.densityKgPerM3);
}

/** Whole shots in a length of sheet; what is left at the end is shorter than one advance. */
export function shotsInLength(lengthM: number, indexLengthMm: number): number {
  return Math.floor((lengthM * 1000) / indexLengthMm + 1e-9);
}

/** Minutes until a reel of so many shots is empty: the planner's time between reel changes. */
export function minutesToReelEnd(shots: number, cyclesPerMin: number): number {
  return shots / cyclesPerMin;
}
