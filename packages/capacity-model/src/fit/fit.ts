import type { FormingLine } from "../plant/forming-line.ts";
import type { Mould } from "../plant/mould.ts";
import type { Polymer } from "../plant/polymer.ts";
import type { Product } from "../plant/product.ts";
import type { Sheet } from "../plant/sheet.ts";
import { atLeast, atMost, oneOf } from "./fit-check.ts";
import type { FitCheck } from "./fit-check.ts";
import { cutLengthMm, formingAirForceKn, trimForceKn } from "./forces.ts";

/**
 * Sheet that must stand out beside the mould on each side for the chain to pass it, mm. A processing guide gives
 * 3/8 to 1/2 in (9.5 to 12.7 mm) between rail and mould; this is its lower end.
 */
export const RAIL_CLEARANCE_MM = 9.5;

/** The records that decide whether a product can be made on a line with a mould and a sheet. */
export interface FitInputs {
  readonly line: FormingLine;
  readonly mould: Mould;
  readonly product: Product;
  readonly sheet: Sheet;
  readonly polymer: Polymer;
}

/** The verdict with every check behind it, passed ones too, in a fixed order. */
export interface Fit {
  readonly fits: boolean;
  readonly checks: readonly FitCheck[];
  /** The checks that speak against it; empty when it fits. */
  readonly against: readonly FitCheck[];
}

/**
 * Every reason why a product may or may not be made on a line with a mould and a sheet. Spells out of service are no
 * question of fit: they are closed time of the mould copy.
 */
export function fitOf(inputs: FitInputs): Fit {
  const checks = [
    ...areaChecks(inputs),
    ...sheetChecks(inputs),
    ...forceChecks(inputs),
    ...toolingChecks(inputs),
    ...recordChecks(inputs),
  ];
  const against = checks.filter((check) => !check.passed);
  return { fits: against.length === 0, checks, against };
}

function areaChecks({ line, mould }: FitInputs): readonly FitCheck[] {
  const down = mould.depthDirection === "down";
  return [
    atMost({
      code: "mould-length",
      needed: mould.footprintLengthMm,
      has: line.formingLengthMm,
      unit: "mm",
      what: "Mould length along the line",
    }),
    atMost({
      code: "mould-width",
      needed: mould.footprintWidthMm,
      has: line.formingWidthMm,
      unit: "mm",
      what: "Mould width across the line",
    }),
    atMost({
      code: "depth",
      needed: mould.depthMm,
      has: down ? line.maxDepthDownMm : line.maxDepthUpMm,
      unit: "mm",
      what: down ? "Depth below the sheet" : "Depth above the sheet",
    }),
    atMost({
      code: "index-in-oven",
      needed: mould.indexLengthMm,
      has: line.oven.heatedLengthMm,
      unit: "mm",
      what: "Sheet advance against heated length",
    }),
    atMost({
      code: "mould-mass",
      needed: mould.massKg,
      has: line.maxMouldMassKg,
      unit: "kg",
      what: "Mould mass on the loading gear",
    }),
  ];
}

function sheetChecks({ line, mould, sheet }: FitInputs): readonly FitCheck[] {
  const thickness = { needed: sheet.thicknessMm, unit: "mm", what: "Sheet thickness" } as const;
  const width = { needed: sheet.widthMm, unit: "mm", what: "Sheet width on the line" } as const;
  return [
    atLeast({ code: "sheet-thickness-least", ...thickness, has: line.sheetThicknessMinMm }),
    atMost({ code: "sheet-thickness-most", ...thickness, has: line.sheetThicknessMaxMm }),
    atLeast({ code: "sheet-width-least", ...width, has: line.sheetWidthMinMm }),
    atMost({ code: "sheet-width-most", ...width, has: line.sheetWidthMaxMm }),
    atLeast({
      code: "sheet-covers-mould",
      needed: sheet.widthMm,
      has: mould.footprintWidthMm + 2 * RAIL_CLEARANCE_MM,
      unit: "mm",
      what: "Sheet width over the mould and its chain clearance",
    }),
  ];
}

function forceChecks({ line, mould, sheet, polymer }: FitInputs): readonly FitCheck[] {
  const trimKn = trimForceKn({
    cutLengthMm: cutLengthMm(mould),
    thicknessMm: sheet.thicknessMm,
    shearStrengthMpa: polymer.shearStrengthMpa,
    hotFactor: polymer.trimHotFactor,
  });
  const airKn = formingAirForceKn(polymer.formingAirBar, mould.pressurisedAreaCm2);
  return [
    atMost({ code: "trim-force", needed: trimKn, has: line.trimForceKn, unit: "kN", what: "Trim force" }),
    atMost({
      code: "forming-air-force",
      needed: airKn,
      has: line.formingAirForceKn,
      unit: "kN",
      what: "Forming-air force on the mould",
    }),
    atMost({
      code: "forming-air-pressure",
      needed: polymer.formingAirBar,
      has: line.formingAirMaxBar,
      unit: "bar",
      what: "Forming-air pressure",
    }),
  ];
}

function toolingChecks({ line, mould, product, polymer }: FitInputs): readonly FitCheck[] {
  return [
    oneOf({
      code: "polymer-on-line",
      needed: polymer.name,
      has: line.polymers,
      yes: `${line.name} runs ${polymer.name}.`,
      no: `${line.name} does not run ${polymer.name}; it runs ${listed(line.polymers)}.`,
    }),
    oneOf({
      code: "stacker-tooling",
      needed: mould.stackerTooling,
      has: line.stackerTooling,
      yes: `${line.name} takes the stacker tooling ${mould.stackerTooling}.`,
      no: `${line.name} does not take the stacker tooling ${mould.stackerTooling}; it takes ${listed(line.stackerTooling)}.`,
    }),
    ...(product.rimRolled ? rimChecks(line, mould) : []),
  ];
}

function rimChecks(line: FormingLine, mould: Mould): readonly FitCheck[] {
  const units = line.rimRollingMaxCyclesPerMin === null ? [] : ["rim-rolling unit"];
  const tooling = mould.rimTooling;
  return [
    oneOf({
      code: "rim-rolling-unit",
      needed: "rim-rolling unit",
      has: units,
      yes: `${line.name} has a rim-rolling unit.`,
      no: `The rim is rolled, and ${line.name} has no rim-rolling unit.`,
    }),
    oneOf({
      code: "rim-tooling",
      needed: tooling ?? "rim tooling",
      has: tooling === null ? [] : line.rimTooling,
      yes: `${line.name} takes the rim tooling ${tooling ?? ""}.`,
      no:
        tooling === null
          ? `The rim is rolled, and ${mould.name} has no rim tooling.`
          : `${line.name} does not take the rim tooling ${tooling}; it takes ${listed(line.rimTooling)}.`,
    }),
  ];
}

function recordChecks({ line, mould, product, sheet, polymer }: FitInputs): readonly FitCheck[] {
  const choices = product.moulds.filter((choice) => choice.mouldId === mould.id);
  const wantedInserts = choices.map((choice) => choice.insertId);
  // several choices of one mould differ by insert; one that the mould has is enough
  const insert =
    wantedInserts.find((id) => id === null || mould.inserts.includes(id)) ?? wantedInserts[0] ?? null;
  return [
    oneOf({
      code: "approval",
      needed: line.id,
      has: mould.approvedLineIds ?? [line.id],
      yes:
        mould.approvedLineIds === null
          ? `${mould.name} may run on every line that it fits.`
          : `${mould.name} is approved on ${line.name}.`,
      no: `${mould.name} is not approved on ${line.name}; it is approved on ${listed(mould.approvedLineIds ?? [])}.`,
    }),
    oneOf({
      code: "product-mould",
      needed: mould.id,
      has: product.moulds.map((choice) => choice.mouldId),
      yes: `${product.name} is made with ${mould.name}.`,
      no: `${product.name} is not made with ${mould.name}.`,
    }),
    ...(insert === null
      ? []
      : [
          oneOf({
            code: "product-insert",
            needed: insert,
            has: mould.inserts,
            yes: `${mould.name} has the insert ${insert}.`,
            no: `${product.name} needs the insert ${insert}, which ${mould.name} does not have.`,
          }),
        ]),
    oneOf({
      code: "product-sheet",
      needed: product.sheetId,
      has: [sheet.id],
      yes: `${product.name} is made from ${sheet.name}.`,
      no: `${product.name} is made from another sheet than ${sheet.name}.`,
    }),
    oneOf({
      code: "sheet-polymer",
      needed: polymer.name,
      has: [sheet.polymer],
      yes: `${sheet.name} is ${polymer.name}.`,
      no: `${sheet.name} is ${sheet.polymer}, and the material data are those of ${polymer.name}.`,
    }),
  ];
}

function listed(names: readonly string[]): string {
  return names.length === 0 ? "none" : names.join(", ");
}
