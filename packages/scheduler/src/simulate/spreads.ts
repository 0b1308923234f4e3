import { fault } from "../problem/fault.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import type { ProblemFault } from "../result.ts";
import type { LineFailures, SimulationParams, Spreads } from "./simulation.ts";

/** A line that fails every ten hours of running and stands half an hour then (common practice, no source). */
export const USUAL_FAILURES: LineFailures = { meanBetweenSeconds: 10 * 3600, meanRepairSeconds: 1800 };

/** Runs within some 5 % and changes within some 25 % of their plan (common practice, no source). */
export const USUAL_VARIATIONS = { runVariation: 0.05, changeVariation: 0.25 } as const;

/** What to assume of a plant of which nothing is known: every line fails as usual, beyond what its rates allow for. */
export function usualSpreads({ lines }: ProblemData): Spreads {
  return {
    failures: new Map(lines.map(({ id }) => [id, USUAL_FAILURES])),
    failuresInRates: false,
    ...USUAL_VARIATIONS,
  };
}

/** A spread wider than this is a slip of the pen. */
const WIDEST_VARIATION = 5;

const isVariation = (value: number): boolean => value >= 0 && value <= WIDEST_VARIATION;

/** What is wrong with the wishes for a simulation of a plant. */
export function simulationFaults(
  { lines }: ProblemData,
  { runs, seed, spreads }: SimulationParams,
): readonly ProblemFault[] {
  const faults: ProblemFault[] = [];
  if (!Number.isSafeInteger(runs) || runs < 1)
    faults.push(fault("runs", "runs", `${runs} plays were asked for.`, "Give a whole number from 1 on."));
  if (!Number.isSafeInteger(seed))
    faults.push(fault("seed", "seed", `${seed} is no seed.`, "Give a whole number."));
  for (const name of ["runVariation", "changeVariation"] as const)
    if (!isVariation(spreads[name])) {
      const text = `${name} is ${spreads[name]}.`;
      faults.push(fault("variation", name, text, `Give a number from 0 to ${WIDEST_VARIATION}.`));
    }
  const known = new Set(lines.map(({ id }) => id));
  for (const [lineId, { meanBetweenSeconds: between, meanRepairSeconds: repair }] of spreads.failures) {
    if (!known.has(lineId))
      faults.push(
        fault("unknown-line", lineId, `There is no line ${lineId} to fail.`, "Name a line of the plant."),
      );
    // more than one failure a minute would make nothing but repairs
    if (!(between >= 60) || !(repair >= 0) || !Number.isFinite(between + repair)) {
      const text = `Line ${lineId} fails every ${between} s for ${repair} s.`;
      const remedy = "Give 60 s or more between failures and 0 s or more for a repair.";
      faults.push(fault("line-failures", lineId, text, remedy));
    }
  }
  return faults;
}
