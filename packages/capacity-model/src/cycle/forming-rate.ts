import type { ProvenRate } from "../plant/product.ts";
import { impossibleBy } from "./cycle-fault.ts";
import type { Impossible } from "./cycle-fault.ts";
import { machineCycle } from "./machine-cycle.ts";
import type { CycleInputs, MachineCycle } from "./machine-cycle.ts";
import { hourlyOutput, shotFaults, shotOf } from "./shot.ts";
import type { HourlyOutput, Shot } from "./shot.ts";

/** What a rate rests on, with the computed cycle beside it in either case. */
export type RateBasis =
  | {
      readonly kind: "computed";
      readonly cycle: MachineCycle;
      /** The line's performance factor, applied to the computed rate; 1 changes nothing. */
      readonly performanceFactor: number;
    }
  | {
      readonly kind: "proven";
      readonly provenRate: ProvenRate;
      /** What the model would have said, or why it cannot say. */
      readonly cycle: MachineCycle | Impossible;
    };

/** Rate to plan with: cycle, pieces and material. `cyclesPerMin` × `cycleSeconds` = 60. */
export interface FormingRate extends HourlyOutput {
  readonly kind: "rate";
  readonly basis: RateBasis;
  readonly cycleSeconds: number;
  readonly cyclesPerMin: number;
  readonly shot: Shot;
}

/** The records that decide a rate, with the plant's proven rates. */
export interface RateInputs extends CycleInputs {
  readonly provenRates: readonly ProvenRate[];
}

/**
 * The rate of a line with a mould, product and sheet. A proven rate of the same line, mould and product wins, without
 * the performance factor, which it already contains. Does not ask whether the mould fits: that is `fitOf`.
 */
export function formingRate(inputs: RateInputs): FormingRate | Impossible {
  // pieces and kilograms need a sound shot, whoever measured the rate
  const impossibleShot = impossibleBy(shotFaults(inputs));
  const cycle = machineCycle(inputs);
  const provenRate = provenRateFor(inputs);
  if (provenRate !== null && impossibleShot === null)
    return rateOf(inputs, { kind: "proven", provenRate, cycle }, provenRate.cyclesPerMin);
  if (cycle.kind === "impossible") return cycle;
  const { performanceFactor } = inputs.line;
  return rateOf(
    inputs,
    { kind: "computed", cycle, performanceFactor },
    cycle.cyclesPerMin * performanceFactor,
  );
}

/** The proven rate of the line, mould and product with the most reports, the first of equals; null when none was measured. */
function provenRateFor({ line, mould, product, provenRates }: RateInputs): ProvenRate | null {
  return provenRates
    .filter((rate) => rate.lineId === line.id && rate.mouldId === mould.id && rate.productId === product.id)
    .reduce<ProvenRate | null>(
      (best, rate) => (best === null || rate.reports > best.reports ? rate : best),
      null,
    );
}

function rateOf(inputs: RateInputs, basis: RateBasis, cyclesPerMin: number): FormingRate {
  const shot = shotOf(inputs);
  return {
    kind: "rate",
    basis,
    cycleSeconds: 60 / cyclesPerMin,
    cyclesPerMin,
    shot,
    ...hourlyOutput(shot, cyclesPerMin, inputs.product.runScrapShare),
  };
}
