import { Mould } from "@formweek/capacity-model";

/** Layout of a mould in few words; the rest of the record follows by geometry. */
export interface MouldShape {
  readonly id: string;
  readonly name: string;
  readonly family: string;
  readonly round: boolean;
  /** Outer size of one cavity, machine direction × across; equal for a round one. */
  readonly cavityLengthMm: number;
  readonly cavityWidthMm: number;
  readonly along: number;
  readonly across: number;
  readonly depthMm: number;
  readonly copies: number;
  readonly rimRolled: boolean;
  readonly inserts: readonly string[];
  readonly heatUpMinutes: number;
  readonly preheatable: boolean;
  readonly calibrationFactor: number;
  readonly approvedLineIds: readonly string[] | null;
}

/** Web between neighbouring rims and border around the outermost ones; invented, within common practice, no source. */
const WEB_MM = 8;
const BORDER_MM = 10;

/** Steel and aluminium of a form-and-trim mould, averaged over its box; invented. */
const MOULD_DENSITY_KG_PER_M3 = 3600;

/** A whole mould record from its layout. */
export function mouldOfShape(shape: MouldShape): Mould {
  const lengthPitch = shape.cavityLengthMm + WEB_MM;
  const widthPitch = shape.cavityWidthMm + WEB_MM;
  const footprintLengthMm = shape.along * lengthPitch - WEB_MM + 2 * BORDER_MM;
  const footprintWidthMm = shape.across * widthPitch - WEB_MM + 2 * BORDER_MM;
  const cutLengthPerCavityMm = shape.round
    ? Math.PI * shape.cavityLengthMm
    : 2 * (shape.cavityLengthMm + shape.cavityWidthMm);
  return Mould.parse({
    id: shape.id,
    name: shape.name,
    family: shape.family,
    cavitiesAlong: shape.along,
    cavitiesAcross: shape.across,
    footprintLengthMm,
    footprintWidthMm,
    indexLengthMm: shape.along * lengthPitch,
    depthMm: shape.depthMm,
    depthDirection: "down",
    massKg:
      Math.round(
        (footprintLengthMm * footprintWidthMm * (shape.depthMm + 330) * MOULD_DENSITY_KG_PER_M3) / 1e9 / 10,
      ) * 10,
    cutLengthPerCavityMm: Math.round(cutLengthPerCavityMm * 10) / 10,
    pressurisedAreaCm2: Math.round((footprintLengthMm * footprintWidthMm) / 100),
    inserts: shape.inserts,
    copies: shape.copies,
    heatUpMinutes: shape.heatUpMinutes,
    preheatable: shape.preheatable,
    stackerTooling: shape.round ? "round" : "tray",
    rimTooling: shape.rimRolled ? `rim ${String(shape.cavityLengthMm)}` : null,
    approvedLineIds: shape.approvedLineIds,
    serviceAfterCycles: null,
    serviceHours: 4,
    formSeconds: 0.12 + shape.depthMm / 1000,
    trimSeconds: 0.1,
    calibrationFactor: shape.calibrationFactor,
    contactConductanceWPerM2K: 3000,
    maxCyclesPerMin: shape.depthMm > 100 ? 34 : 45,
  });
}
