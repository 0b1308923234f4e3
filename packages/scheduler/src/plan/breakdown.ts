import type { ObjectiveWeights } from "../problem/problem-data.ts";
import type { CostSums } from "../timing/cost-sums.ts";
import type { ObjectiveBreakdown, ObjectiveTerm } from "./plan.ts";

/** The named terms of a plan's cost, from the amounts that its timing added up. */
export function breakdownOf(sums: CostSums, prices: ObjectiveWeights): ObjectiveBreakdown {
  const term = (name: ObjectiveTerm["name"], unit: string, amount: number, price: number): ObjectiveTerm => ({
    name,
    unit,
    amount,
    price,
    cost: amount * price,
  });
  const terms = [
    term("weighted tardiness", "weight × h", sums.lateWeightSeconds / 3600, prices.tardinessPerWeightHour),
    term("late orders", "weight", sums.lateWeight, prices.lateOrderPerWeight),
    term("change time", "h", sums.changeSeconds / 3600, prices.changePerMachineHour),
    term("team time", "h", sums.teamSeconds / 3600, prices.changePerTeamHour),
    term("start-up scrap", "kg", sums.scrapKg, prices.scrapPerKg),
    term("overtime", "h", sums.overtimeSeconds / 3600, prices.overtimePerHour),
    term("earliness", "holding weight × h", sums.earlyWeightSeconds / 3600, prices.earlinessPerWeightHour),
    term("load balance", "h", sums.imbalanceSeconds / 3600, prices.balancePerHour),
    term("lines changed", "orders", sums.linesChanged, prices.movedLinePerOrder),
    term("starts moved", "h", sums.startsMovedSeconds / 3600, prices.movedStartPerHour),
    term("unplanned orders", "weight", sums.unplannedWeight, prices.unplannedPerWeight),
    term("makespan", "h", sums.lastEnd / 3600, prices.makespanPerHour),
  ];
  return { terms, total: terms.reduce((sum, { cost }) => sum + cost, 0) };
}
