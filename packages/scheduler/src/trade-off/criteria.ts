import { PRICE_OF } from "../plan/breakdown.ts";
import type { ObjectiveBreakdown, ObjectiveTerm } from "../plan/plan.ts";
import type { ObjectiveWeights, ProblemData } from "../problem/problem-data.ts";

/** Something that a planner weighs against the rest: terms of the objective that belong together. */
export interface Criterion {
  readonly name: "lateness" | "changes" | "labour" | "earliness" | "load balance" | "stability" | "last end";
  readonly terms: readonly ObjectiveTerm["name"][];
}

/** Orders left out count as lateness, or leaving out would pass for being on time. */
const TERMS: Readonly<Record<Criterion["name"], Criterion["terms"]>> = {
  lateness: ["weighted tardiness", "late orders", "unplanned orders"],
  changes: ["change time", "start-up scrap"],
  labour: ["overtime", "team time"],
  earliness: ["earliness"],
  "load balance": ["load balance"],
  stability: ["lines changed", "starts moved"],
  "last end": ["makespan"],
};

export function criterionNamed(name: Criterion["name"]): Criterion {
  return { name, terms: TERMS[name] };
}

const CRITERIA: readonly Criterion[] = (Object.keys(TERMS) as Criterion["name"][]).map(criterionNamed);

/** An order is planned where it can be, whatever is favoured: its price stays. */
const NEVER_LESS: ReadonlySet<ObjectiveTerm["name"]> = new Set(["unplanned orders"]);

/** Terms whose price can be lowered. */
const weighable = ({ terms }: Criterion): readonly ObjectiveTerm["name"][] =>
  terms.filter((term) => !NEVER_LESS.has(term));

/** The criteria that have a price in the problem; the others are nobody's concern there. */
export function criteriaOf({ objective }: ProblemData): readonly Criterion[] {
  return CRITERIA.filter((criterion) => weighable(criterion).some((term) => objective[PRICE_OF[term]] > 0));
}

/** Money of a criterion in a plan, to the cent: less is no difference. */
export function valueOf({ terms }: Criterion, objective: ObjectiveBreakdown): number {
  const money = objective.terms.reduce((sum, { name, cost }) => sum + (terms.includes(name) ? cost : 0), 0);
  return Math.round(money * 100) / 100;
}

/** Prices under which all other criteria count only `share` of what they do. */
export function favouring(objective: ObjectiveWeights, favoured: Criterion, share: number): ObjectiveWeights {
  const others = CRITERIA.filter(({ name }) => name !== favoured.name).flatMap(weighable);
  const lowered = others.map((term) => [PRICE_OF[term], objective[PRICE_OF[term]] * share] as const);
  return { ...objective, ...Object.fromEntries(lowered) };
}
