import type { ObjectiveWeights } from "../problem/problem-data.ts";
import type { CostSums } from "../timing/cost-sums.ts";
import type { ObjectiveBreakdown, ObjectiveTerm } from "./plan.ts";

/** The price of each term. */
export const PRICE_OF: Readonly<Record<ObjectiveTerm["name"], keyof ObjectiveWeights>> = {
  "weighted tardiness": "tardinessPerWeightHour",
  "late orders": "lateOrderPerWeight",
  "change time": "changePerMachineHour",
  "team time": "changePerTeamHour",
  "start-up scrap": "scrapPerKg",
  overtime: "overtimePerHour",
  earliness: "earlinessPerWeightHour",
  "load balance": "balancePerHour",
  "lines changed": "movedLinePerOrder",
  "starts moved": "movedStartPerHour",
  "unplanned orders": "unplannedPerWeight",
  makespan: "makespanPerHour",
};

type Amount = Pick<ObjectiveTerm, "name" | "unit" | "amount">;

function priced(amounts: readonly Amount[], prices: ObjectiveWeights): ObjectiveBreakdown {
  const terms = amounts.map(({ name, unit, amount }): ObjectiveTerm => {
    const price = prices[PRICE_OF[name]];
    return { name, unit, amount, price, cost: amount * price };
  });
  return { terms, total: terms.reduce((sum, { cost }) => sum + cost, 0) };
}

/** The named terms of a plan's cost, from the amounts that its timing added up. */
export function breakdownOf(sums: CostSums, prices: ObjectiveWeights): ObjectiveBreakdown {
  const amounts: readonly Amount[] = [
    { name: "weighted tardiness", unit: "weight × h", amount: sums.lateWeightSeconds / 3600 },
    { name: "late orders", unit: "weight", amount: sums.lateWeight },
    { name: "change time", unit: "h", amount: sums.changeSeconds / 3600 },
    { name: "team time", unit: "h", amount: sums.teamSeconds / 3600 },
    { name: "start-up scrap", unit: "kg", amount: sums.scrapKg },
    { name: "overtime", unit: "h", amount: sums.overtimeSeconds / 3600 },
    { name: "earliness", unit: "holding weight × h", amount: sums.earlyWeightSeconds / 3600 },
    { name: "load balance", unit: "h", amount: sums.imbalanceSeconds / 3600 },
    { name: "lines changed", unit: "orders", amount: sums.linesChanged },
    { name: "starts moved", unit: "h", amount: sums.startsMovedSeconds / 3600 },
    { name: "unplanned orders", unit: "weight", amount: sums.unplannedWeight },
    { name: "makespan", unit: "h", amount: sums.lastEnd / 3600 },
  ];
  return priced(amounts, prices);
}

/** The same amounts at other prices. */
export function repriced(objective: ObjectiveBreakdown, prices: ObjectiveWeights): ObjectiveBreakdown {
  return priced(objective.terms, prices);
}

/** What the amounts of a plan are above those of another, at the same prices: what it adds to the cost, term by term. */
export function addedCost(
  plan: ObjectiveBreakdown,
  before: ObjectiveBreakdown,
  prices: ObjectiveWeights,
): ObjectiveBreakdown {
  const amounts = plan.terms.map(({ name, unit, amount }, i): Amount => {
    return { name, unit, amount: amount - before.terms[i]!.amount };
  });
  return priced(amounts, prices);
}
