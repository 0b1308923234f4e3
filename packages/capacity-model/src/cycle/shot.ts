import type { Mould } from "../plant/mould.ts";
import type { Polymer } from "../plant/polymer.ts";
import type { Product } from "../plant/product.ts";
import type { Sheet } from "../plant/sheet.ts";
import type { CycleFault } from "./cycle-fault.ts";

/** What one cycle takes off the sheet and gives in pieces. */
export interface Shot {
  readonly cavities: number;
  readonly sheetKg: number;
  readonly netKg: number;
  /** Part of the shot that is cut away as skeleton and edges, 0…1, rejects apart. */
  readonly skeletonShare: number;
}

/** Records that make up a shot. */
export interface ShotInputs {
  readonly mould: Mould;
  readonly product: Product;
  readonly sheet: Sheet;
  readonly polymer: Polymer;
}

/** The shot of a mould on a sheet: advance × width × thickness × density, and the pieces in it. */
export function shotOf({ mould, product, sheet, polymer }: ShotInputs): Shot {
  const cavities = mould.cavitiesAlong * mould.cavitiesAcross;
  const sheetKg =
    (sheet.widthMm / 1000) *
    (mould.indexLengthMm / 1000) *
    (sheet.thicknessMm / 1000) *
    polymer.densityKgPerM3;
  const netKg = (cavities * product.netMassG) / 1000;
  return { cavities, sheetKg, netKg, skeletonShare: 1 - netKg / sheetKg };
}

/** Contradictions between product, sheet and material; empty when there are none. */
export function shotFaults(inputs: ShotInputs): readonly CycleFault[] {
  const { product, sheet, polymer } = inputs;
  const faults: CycleFault[] = [];
  if (sheet.polymer !== polymer.name)
    faults.push({
      code: "polymer-not-the-sheets",
      cause: `Sheet ${sheet.name} is ${sheet.polymer}, but the material data are those of ${polymer.name}.`,
      remedy: `Use the material data of ${sheet.polymer}.`,
      numbers: {},
    });
  const shot = shotOf(inputs);
  if (shot.netKg > shot.sheetKg)
    faults.push({
      code: "net-mass-above-shot",
      cause: `${shot.cavities} pieces of ${product.netMassG} g weigh ${shot.netKg.toFixed(3)} kg, more than the ${shot.sheetKg.toFixed(3)} kg of sheet in one shot.`,
      remedy: "Correct the piece's mass, the cavities, the advance, or the sheet's width and thickness.",
      numbers: { cavities: shot.cavities, netKg: shot.netKg, sheetKg: shot.sheetKg },
    });
  if (product.wallThicknessMm > sheet.thicknessMm)
    faults.push({
      code: "wall-thicker-than-sheet",
      cause: `The wall of ${product.name} is ${product.wallThicknessMm} mm, thicker than its sheet of ${sheet.thicknessMm} mm; forming only thins.`,
      remedy: "Correct the wall thickness or choose a thicker sheet.",
      numbers: { wallThicknessMm: product.wallThicknessMm, sheetThicknessMm: sheet.thicknessMm },
    });
  return faults;
}

/** Pieces and material per hour at a rate. */
export interface HourlyOutput {
  readonly piecesPerH: number;
  /** Pieces per hour less the product's run scrap. */
  readonly goodPiecesPerH: number;
  readonly sheetKgPerH: number;
  /** Mass of the good pieces. */
  readonly netKgPerH: number;
}

/** Output of a shot repeated `cyclesPerMin` times a minute with `runScrapShare` of the pieces rejected. */
export function hourlyOutput(shot: Shot, cyclesPerMin: number, runScrapShare: number): HourlyOutput {
  const cyclesPerH = cyclesPerMin * 60;
  return {
    piecesPerH: cyclesPerH * shot.cavities,
    goodPiecesPerH: cyclesPerH * shot.cavities * (1 - runScrapShare),
    sheetKgPerH: cyclesPerH * shot.sheetKg,
    netKgPerH: cyclesPerH * shot.netKg * (1 - runScrapShare),
  };
}

/** Cycles per minute that so many pieces an hour take. */
export function cyclesPerMinFor(piecesPerH: number, cavities: number): number {
  return piecesPerH / 60 / cavities;
}

/** Fewest cavities that give at least so many pieces an hour at a rate. */
export function cavitiesFor(piecesPerH: number, cyclesPerMin: number): number {
  return Math.ceil(piecesPerH / 60 / cyclesPerMin - 1e-9);
}

/** Seconds per cycle that a sheet flow allows: kilograms per shot over kilograms per hour. */
export function flowCycleSeconds(sheetKg: number, flowKgPerH: number): number {
  return (3600 * sheetKg) / flowKgPerH;
}
