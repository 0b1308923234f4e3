import type { ProblemFault } from "../result.ts";
import { fault, isAmount } from "./fault.ts";
import type { ObjectiveWeights, ProblemData } from "./problem-data.ts";

/** Every price by name, which the type keeps complete: a record from outside may lack one. */
const PRICES: Readonly<Record<keyof ObjectiveWeights, true>> = {
  tardinessPerWeightHour: true,
  lateOrderPerWeight: true,
  changePerMachineHour: true,
  changePerTeamHour: true,
  scrapPerKg: true,
  overtimePerHour: true,
  earlinessPerWeightHour: true,
  balancePerHour: true,
  movedLinePerOrder: true,
  movedStartPerHour: true,
  unplannedPerWeight: true,
  makespanPerHour: true,
};

/** Faults of prices that are missing or no amounts. */
export function priceFaults({ objective }: ProblemData): ProblemFault[] {
  const given: Readonly<Record<string, number | undefined>> = { ...objective };
  return Object.keys(PRICES).flatMap((name) => {
    const price = given[name];
    if (price !== undefined && isAmount(price)) return [];
    const text = price === undefined ? `The price ${name} is missing.` : `The price ${name} is ${price}.`;
    return [fault("price", name, text, `Give ${name} a number from 0 on; at 0 it does not count.`)];
  });
}
