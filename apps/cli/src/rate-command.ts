import { fitOf, formingRate } from "@formweek/capacity-model";
import type { Fit, FormingRate, MachineCycle, Plant } from "@formweek/capacity-model";
import type { Command } from "./command.ts";
import { neededFlag } from "./flags.ts";
import { PLANT_FLAGS, loadPlant } from "./input.ts";
import { UsageError } from "./outcome.ts";

export const rateCommand: Command = {
  title:
    "npm run rate -- (--demo … | --plant …) --line … --mould … --product …\nPrints the machine cycle with its parts, what limits it, and whether the mould fits.",
  flags: {
    ...PLANT_FLAGS,
    line: { value: "<id>", meaning: "forming line" },
    mould: { value: "<id>", meaning: "mould" },
    product: { value: "<id>", meaning: "product" },
  },
  run: async ({ flags, ports, output }) => {
    const plant = await loadPlant(flags, ports, output);
    if (plant === null) return 1;
    const line = named(plant.lines, neededFlag(flags, "line", "with a line's id"), "line");
    const mould = named(plant.moulds, neededFlag(flags, "mould", "with a mould's id"), "mould");
    const product = named(plant.products, neededFlag(flags, "product", "with a product's id"), "product");
    const { sheet, polymer } = materialOf(plant, product.sheetId);
    const inputs = { line, mould, product, sheet, polymer };
    output.say(`${product.name} on ${line.name} with ${mould.name}, sheet ${sheet.name}`);
    const fit = fitOf(inputs);
    for (const row of fitText(fit)) output.say(row);
    const rate = formingRate({ ...inputs, provenRates: plant.provenRates });
    if (rate.kind === "impossible") {
      for (const { cause, remedy } of rate.faults) output.say(`no cycle: ${cause} ${remedy}`);
      return 1;
    }
    if (!fit.fits) output.say("No order is planned so; the figures below only say what the cycle would be.");
    for (const row of rateText(rate, fit.fits ? "Rate to plan with" : "Rate if it fitted")) output.say(row);
    return 0;
  },
};

function named<T extends { readonly id: string; readonly name: string }>(
  records: readonly T[],
  text: string,
  what: string,
): T {
  const found = records.find(({ id }) => id === text) ?? records.find(({ name }) => name === text);
  if (found !== undefined) return found;
  const some = records
    .slice(0, 12)
    .map(({ id }) => id)
    .join(", ");
  throw new UsageError(
    `The plant has no ${what} "${text}".`,
    `It has ${some}${records.length > 12 ? ", …" : ""}.`,
  );
}

function materialOf(plant: Plant, sheetId: string) {
  const sheet = plant.sheets.find(({ id }) => id === sheetId);
  const polymer = plant.polymers.find(({ name }) => name === sheet?.polymer);
  if (sheet === undefined || polymer === undefined)
    throw new UsageError(
      `The product's sheet ${sheetId} is not in the plant.`,
      "Correct the product's sheet.",
    );
  return { sheet, polymer };
}

function fitText(fit: Fit): readonly string[] {
  if (fit.fits) return [`It fits: all ${fit.checks.length} checks passed.`];
  return ["It does not fit:", ...fit.against.map(({ sentence }) => `  ${sentence}`)];
}

function rateText(rate: FormingRate, label: string): readonly string[] {
  const { basis } = rate;
  const cycle = basis.cycle.kind === "cycle" ? basis.cycle : null;
  const origin =
    basis.kind === "proven"
      ? `proven by ${basis.provenRate.reports} reports, ± ${basis.provenRate.spreadCyclesPerMin} cycles/min${cycle === null ? "" : `; the model says ${cycle.cyclesPerMin.toFixed(2)}`}`
      : `computed, performance factor ${basis.performanceFactor}`;
  return [
    ...(cycle === null ? [] : cycleText(cycle)),
    `${label}: ${rate.cyclesPerMin.toFixed(2)} cycles/min (${origin})`,
    `  ${Math.round(rate.piecesPerH)} pieces/h formed, ${Math.round(rate.goodPiecesPerH)} good`,
    `  ${rate.sheetKgPerH.toFixed(0)} kg/h of sheet, ${rate.netKgPerH.toFixed(0)} kg/h net, skeleton ${(rate.shot.skeletonShare * 100).toFixed(1)} % of the shot of ${rate.shot.sheetKg.toFixed(3)} kg`,
  ];
}

function cycleText(cycle: MachineCycle): readonly string[] {
  const { parts, limit } = cycle;
  const over =
    limit.overNextShare === null ? "" : `, ${(limit.overNextShare * 100).toFixed(1)} % over the next limit`;
  return [
    `Cycle ${cycle.cycleSeconds.toFixed(3)} s, ${cycle.cyclesPerMin.toFixed(2)} cycles/min; ${limit.code} limits it${over}`,
    `  closed ${parts.closedSeconds.toFixed(3)} s: forming ${parts.formSeconds.toFixed(3)}, stabilising ${parts.stabiliseSeconds.toFixed(3)}, trimming ${parts.trimSeconds.toFixed(3)}`,
    `  open ${parts.open.openSeconds.toFixed(3)} s; heating ${parts.heatingSeconds.toFixed(2)} s over ${parts.ovenPositions} oven positions`,
    ...cycle.limits.map(({ sentence }) => `  ${sentence}`),
  ];
}
