import type { ObjectiveTerm } from "../plan/plan.ts";
import type { ChangeSpec } from "../problem/problem-data.ts";
import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import { finding } from "./finding.ts";

type TermName = ObjectiveTerm["name"];
type Amounts = Readonly<Record<TermName, number>>;

const hour = 3_600;

function lateness(context: AuditContext): { readonly weightHours: number; readonly lateWeight: number } {
  const finishOf = new Map<string, number>();
  for (const lot of context.lots) {
    finishOf.set(lot.orderId, Math.max(finishOf.get(lot.orderId) ?? -Infinity, lot.end));
  }
  let weightSeconds = 0;
  let lateWeight = 0;
  for (const job of context.problem.jobs) {
    const late = (finishOf.get(job.orderId) ?? -Infinity) + job.conditioningSeconds - job.dueAt;
    if (late <= 0) continue;
    weightSeconds += job.weight * late;
    lateWeight += job.weight;
  }
  return { weightHours: weightSeconds / hour, lateWeight };
}

function amounts(context: AuditContext): Amounts {
  const specs = context.plan.segments.flatMap((segment): ChangeSpec[] => {
    const spec = segment.kind === "change" ? context.changeSpecOf(segment.changeSpec) : null;
    return spec === null ? [] : [spec];
  });
  const sum = (of: (spec: ChangeSpec) => number) => specs.reduce((total, spec) => total + of(spec), 0);
  const { weightHours, lateWeight } = lateness(context);
  const unplanned = new Set(context.plan.unplanned.map((entry) => entry.orderId));
  const lastEnd = context.lots.reduce(
    (latest, lot) => Math.max(latest, lot.end),
    context.problem.horizon.start,
  );
  return {
    "weighted tardiness": weightHours,
    "late orders": lateWeight,
    "change time": sum((spec) => spec.dismountSeconds + spec.mountSeconds + spec.tailSeconds) / hour,
    "team time": sum((spec) => spec.dismountSeconds + spec.mountSeconds) / hour,
    "start-up scrap": sum((spec) => spec.scrapKg),
    "unplanned orders": context.problem.jobs.reduce(
      (total, job) => total + (unplanned.has(job.orderId) ? job.weight : 0),
      0,
    ),
    makespan: (lastEnd - context.problem.horizon.start) / hour,
  };
}

/** Sums of many terms differ in their last digits with the order of adding. */
function agree(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-6 + 1e-9 * Math.max(Math.abs(a), Math.abs(b));
}

/** Every named term and the total, recomputed from the segments. */
export function objectiveTerms(context: AuditContext): Violation[] {
  const weights = context.problem.objective;
  const prices: Amounts = {
    "weighted tardiness": weights.tardinessPerWeightHour,
    "late orders": weights.lateOrderPerWeight,
    "change time": weights.changePerMachineHour,
    "team time": weights.changePerTeamHour,
    "start-up scrap": weights.scrapPerKg,
    "unplanned orders": weights.unplannedPerWeight,
    makespan: weights.makespanPerHour,
  };
  const right = amounts(context);
  const names = Object.keys(prices) as TermName[];
  const given = context.plan.objective.terms;
  const found: Violation[] = [];
  const check = (what: string, value: number, wanted: number) => {
    if (agree(value, wanted)) return;
    found.push(
      finding("wrong-objective", {}, `The plan gives ${value} as ${what}; recomputed it is ${wanted}.`),
    );
  };
  if (given.length !== names.length || names.some((name, index) => given[index]?.name !== name)) {
    const listed = given.map((term) => term.name).join(", ");
    return [
      finding(
        "wrong-objective",
        {},
        `The plan lists the terms "${listed}"; "${names.join(", ")}" are needed.`,
      ),
    ];
  }
  for (const term of given) {
    check(`the amount of ${term.name}`, term.amount, right[term.name]);
    check(`the price of ${term.name}`, term.price, prices[term.name]);
    check(`the cost of ${term.name}`, term.cost, right[term.name] * prices[term.name]);
  }
  check(
    "the total",
    context.plan.objective.total,
    names.reduce((sum, name) => sum + right[name] * prices[name], 0),
  );
  return found;
}
