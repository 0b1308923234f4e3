import type { CompiledProblem } from "../problem/compiled-problem.ts";

/** The objective's amounts as they add up while a plan is timed. */
export interface CostSums {
  /** weight × s late */
  lateWeightSeconds: number;
  /** weight of late orders */
  lateWeight: number;
  lateOrders: number;
  /** s of machine time in changes */
  changeSeconds: number;
  /** s of team work */
  teamSeconds: number;
  scrapKg: number;
  /** s of overtime in runs, warm-ups and changes */
  overtimeSeconds: number;
  /** holding weight × s early */
  earlyWeightSeconds: number;
  /** s by which the busiest line exceeds the mean of all */
  imbalanceSeconds: number;
  /** orders with a lot on another line than published */
  linesChanged: number;
  /** s between first starts and the published ones */
  startsMovedSeconds: number;
  unplannedWeight: number;
  /** s after the horizon's start at which the last run ends */
  lastEnd: number;
}

export function zeroSums(): CostSums {
  return {
    lateWeightSeconds: 0,
    lateWeight: 0,
    lateOrders: 0,
    changeSeconds: 0,
    teamSeconds: 0,
    scrapKg: 0,
    overtimeSeconds: 0,
    earlyWeightSeconds: 0,
    imbalanceSeconds: 0,
    linesChanged: 0,
    startsMovedSeconds: 0,
    unplannedWeight: 0,
    lastEnd: 0,
  };
}

export function clearSums(sums: CostSums): void {
  sums.lateWeightSeconds = 0;
  sums.lateWeight = 0;
  sums.lateOrders = 0;
  sums.changeSeconds = 0;
  sums.teamSeconds = 0;
  sums.scrapKg = 0;
  sums.overtimeSeconds = 0;
  sums.earlyWeightSeconds = 0;
  sums.imbalanceSeconds = 0;
  sums.linesChanged = 0;
  sums.startsMovedSeconds = 0;
  sums.unplannedWeight = 0;
  sums.lastEnd = 0;
}

/** Money of the sums, lateness taken `lateScale` times: 1 is the plan's true cost. */
export function moneyOf(problem: CompiledProblem, sums: CostSums, lateScale: number): number {
  const prices = problem.data.objective;
  const late =
    (sums.lateWeightSeconds * prices.tardinessPerWeightHour) / 3600 +
    sums.lateWeight * prices.lateOrderPerWeight;
  return (
    late * lateScale +
    (sums.changeSeconds * prices.changePerMachineHour) / 3600 +
    (sums.teamSeconds * prices.changePerTeamHour) / 3600 +
    sums.scrapKg * prices.scrapPerKg +
    (sums.overtimeSeconds * prices.overtimePerHour) / 3600 +
    (sums.earlyWeightSeconds * prices.earlinessPerWeightHour) / 3600 +
    (sums.imbalanceSeconds * prices.balancePerHour) / 3600 +
    sums.linesChanged * prices.movedLinePerOrder +
    (sums.startsMovedSeconds * prices.movedStartPerHour) / 3600 +
    sums.unplannedWeight * prices.unplannedPerWeight +
    (sums.lastEnd * prices.makespanPerHour) / 3600
  );
}
