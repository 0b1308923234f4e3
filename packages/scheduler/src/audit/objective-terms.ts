import { intersectWorkingTimes, workingBetween } from "@formweek/capacity-model";
import type { ObjectiveTerm } from "../plan/plan.ts";
import type { ChangeSpec, Job } from "../problem/problem-data.ts";
import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import { finding } from "./finding.ts";

type TermName = ObjectiveTerm["name"];
type Amounts = Readonly<Record<TermName, number>>;

const hour = 3_600;

/** End of the last of an order's lots; -Infinity where it has none. */
function lastEndOf({ lotsOfOrder }: AuditContext, { orderId }: Job): number {
  let last = -Infinity;
  for (const { end } of lotsOfOrder.get(orderId) ?? []) if (end > last) last = end;
  return last;
}

function lateness(context: AuditContext): { readonly weightHours: number; readonly lateWeight: number } {
  let weightSeconds = 0;
  let lateWeight = 0;
  for (const job of context.problem.jobs) {
    const late = lastEndOf(context, job) + job.conditioningSeconds - job.dueAt;
    if (late <= 0) continue;
    weightSeconds += job.weight * late;
    lateWeight += job.weight;
  }
  return { weightHours: weightSeconds / hour, lateWeight };
}

/** Seconds of runs, warm-ups and changes on each line that lie in its overtime. */
function overtimeSeconds({ problem, segmentsOfLine }: AuditContext): number {
  let seconds = 0;
  for (const line of problem.lines) {
    const hours = line.overtime === undefined ? null : intersectWorkingTimes(line.overtime, line.workingTime);
    if (hours === null) continue;
    for (const segment of segmentsOfLine.get(line.id) ?? []) {
      if (segment.kind === "stop" && segment.reason !== "warm-up") continue;
      seconds += workingBetween(hours, segment.start, segment.end);
    }
  }
  return seconds;
}

/** Hours by which the busiest line's runs and changes exceed the mean of all lines. */
function imbalance({ problem, segmentsOfLine, changeSpecOf }: AuditContext): number {
  const busy = problem.lines.map((line) =>
    (segmentsOfLine.get(line.id) ?? []).reduce((sum, segment) => {
      if (segment.kind === "run") return sum + segment.end - segment.start;
      const spec = segment.kind === "change" ? changeSpecOf(segment.changeSpec) : null;
      return spec === null ? sum : sum + spec.dismountSeconds + spec.mountSeconds + spec.tailSeconds;
    }, 0),
  );
  const all = busy.reduce((sum, seconds) => sum + seconds, 0);
  return busy.length === 0 ? 0 : (busy.reduce((a, b) => Math.max(a, b), 0) - all / busy.length) / hour;
}

/** Holding weight × hours between finishes and due dates. */
function earliness(context: AuditContext): number {
  return context.problem.jobs.reduce((sum, job) => {
    const end = lastEndOf(context, job);
    const early = end === -Infinity ? 0 : job.dueAt - job.conditioningSeconds - end;
    return sum + (Math.max(0, early) * (job.holdingWeight ?? 0)) / hour;
  }, 0);
}

/** Orders on other lines than published, and hours between their first starts and the published ones. */
function moves(context: AuditContext): { readonly lines: number; readonly startHours: number } {
  let lines = 0;
  let startHours = 0;
  for (const { orderId, published } of context.problem.jobs) {
    const own = context.lotsOfOrder.get(orderId);
    if (published === undefined || own === undefined) continue;
    if (own.some((lot) => !published.lineIds.includes(lot.lineId))) lines++;
    const first = own.reduce((least, lot) => Math.min(least, lot.start), Infinity);
    startHours += Math.abs(first - published.startAt) / hour;
  }
  return { lines, startHours };
}

function amounts(context: AuditContext): Amounts {
  const specs: ChangeSpec[] = [];
  for (const segment of context.plan.segments) {
    const spec = segment.kind === "change" ? context.changeSpecOf(segment.changeSpec) : null;
    if (spec !== null) specs.push(spec);
  }
  const sum = (of: (spec: ChangeSpec) => number) => specs.reduce((total, spec) => total + of(spec), 0);
  const { weightHours, lateWeight } = lateness(context);
  const weights = context.problem.objective;
  const moved =
    weights.movedLinePerOrder + weights.movedStartPerHour === 0
      ? { lines: 0, startHours: 0 }
      : moves(context);
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
    overtime: weights.overtimePerHour === 0 ? 0 : overtimeSeconds(context) / hour,
    earliness: weights.earlinessPerWeightHour === 0 ? 0 : earliness(context),
    "load balance": weights.balancePerHour === 0 ? 0 : imbalance(context),
    "lines changed": moved.lines,
    "starts moved": moved.startHours,
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
    overtime: weights.overtimePerHour,
    earliness: weights.earlinessPerWeightHour,
    "load balance": weights.balancePerHour,
    "lines changed": weights.movedLinePerOrder,
    "starts moved": weights.movedStartPerHour,
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
