import type { Plan, PlanBound } from "@formweek/scheduler";
import type { Assembled, OrderDemand } from "./assembled.ts";
import { describeLate } from "./describe-late.ts";
import { describeLines, describeTeams } from "./describe-lines.ts";
import { describeSegments } from "./describe-segments.ts";
import { isoInstant } from "./iso-instant.ts";
import { finishesOf } from "./plan-figures.ts";
import type { DocumentOrder, OrderState, PlanDocument, PlanSummary } from "./plan-document.ts";

/** What the plan says about its own making. */
export interface PlanOrigin {
  readonly engineVersion: string;
  readonly seed: number;
  readonly steps: number;
  /** What no plan can go below; null when none was computed. */
  readonly bound: PlanBound | null;
}

const DAY_SECONDS = 86_400;

/** As `describePlan`, but without the chains that hold late orders: working them out takes longer than all the rest. */
export function describeProvisional(assembled: Assembled, plan: Plan, origin: PlanOrigin): PlanDocument {
  return described(assembled, plan, origin, []);
}

/** Joins an audited plan with the plant's names into the document that people and programs read. */
export function describePlan(assembled: Assembled, plan: Plan, origin: PlanOrigin): PlanDocument {
  return described(assembled, plan, origin, describeLate(assembled, plan));
}

function described(
  assembled: Assembled,
  plan: Plan,
  origin: PlanOrigin,
  late: PlanDocument["late"],
): PlanDocument {
  const { plant, problem } = assembled;
  const finishes = finishesOf(plan);
  const made = piecesMade(plan);
  const names = new Map<string, string>(plant.products.map((product) => [product.id, product.name]));
  const orders = assembled.demands.map((demand) => ({
    ...describeOrder(demand, made.get(demand.order.id) ?? 0, finishes.get(demand.order.id) ?? null),
    productName: names.get(demand.order.productId) ?? demand.order.productId,
  }));
  const span = spanOf(assembled, plan);
  return {
    format: "formweek-plan/1",
    engineVersion: origin.engineVersion,
    seed: origin.seed,
    steps: origin.steps,
    inputHash: assembled.inputHash,
    plant: { id: plant.id, name: plant.name, timeZone: plant.timeZone, currency: plant.currency },
    horizon: { start: isoInstant(problem.horizon.start), end: isoInstant(problem.horizon.end) },
    lines: describeLines(assembled, plan, span),
    teams: describeTeams(assembled, span),
    segments: describeSegments(assembled, plan, finishes),
    lots: plan.lots.map((lot) => ({
      ...lot,
      start: isoInstant(lot.start),
      end: isoInstant(lot.end),
      finish: isoInstant(lot.finish),
    })),
    orders,
    unplanned: plan.unplanned,
    late,
    objective: plan.objective,
    bound: describeBound(plan, origin.bound),
    summary: summaryOf(assembled, plan, orders),
  };
}

/** Pieces of each order that a plan forms. */
export function piecesMade(plan: Plan): ReadonlyMap<string, number> {
  const made = new Map<string, number>();
  for (const lot of plan.lots) made.set(lot.orderId, (made.get(lot.orderId) ?? 0) + lot.pieces);
  return made;
}

/** From the horizon's start past the last finish and the last due time, in whole days: what a reader wants to see. */
function spanOf(assembled: Assembled, plan: Plan): { readonly start: number; readonly end: number } {
  const { start, end } = assembled.problem.horizon;
  const last = [
    ...plan.lots.map((lot) => lot.finish),
    ...assembled.demands.map((demand) => demand.order.dueAt),
  ].reduce((latest, at) => Math.max(latest, at), start + 7 * DAY_SECONDS);
  const days = Math.ceil((last - start) / DAY_SECONDS);
  return { start, end: Math.min(end, start + days * DAY_SECONDS) };
}

function describeOrder(
  demand: OrderDemand,
  planned: number,
  finish: number | null,
): Omit<DocumentOrder, "productName"> {
  const { order } = demand;
  const late = finish === null ? 0 : Math.max(0, finish - order.dueAt);
  return {
    orderId: order.id,
    customer: order.customer,
    productId: order.productId,
    pieces: order.pieces,
    due: isoInstant(order.dueAt),
    state: orderState(demand, planned, late),
    finish: finish === null ? null : isoInstant(finish),
    lateSeconds: late,
    slackSeconds: finish === null ? null : order.dueAt - finish,
    fromStockPieces: demand.fromStockPieces,
    toMakePieces: demand.toMakePieces,
    grossPieces: demand.grossPieces,
  };
}

/** How an order stands in a plan that makes so many pieces of it. */
export function orderState(demand: OrderDemand, plannedPieces: number, lateSeconds: number): OrderState {
  if (demand.grossPieces === 0) return "covered by stock";
  if (plannedPieces === 0) return "unplanned";
  if (plannedPieces < demand.grossPieces) return "partly planned";
  return lateSeconds > 0 ? "late" : "on time";
}

function describeBound(plan: Plan, bound: PlanBound | null): PlanDocument["bound"] {
  const { total } = plan.objective;
  // a bound of nothing tells nothing of a plan that costs something
  if (bound === null || (bound.total <= 0 && total > 0)) return null;
  const { lateness, changes, changeMinutes } = bound;
  return {
    total: bound.total,
    gap: total <= 0 ? 0 : Math.max(0, (total - bound.total) / total),
    // fewer orders may need fewer changes
    parts: plan.unplanned.length > 0 ? null : { lateness, changes, changeMinutes },
  };
}

const inHours = (seconds: number): number => Math.round(seconds / 36) / 100;

function summaryOf(assembled: Assembled, plan: Plan, orders: readonly DocumentOrder[]): PlanSummary {
  const count = (state: OrderState): number => orders.filter((order) => order.state === state).length;
  const changes = plan.segments.filter((segment) => segment.kind === "change");
  const specs = changes.flatMap((change) => assembled.problem.changes[change.changeSpec] ?? []);
  const teamSeconds = specs.reduce((sum, spec) => sum + spec.dismountSeconds + spec.mountSeconds, 0);
  const ends = plan.lots.map((lot) => lot.end);
  const last = ends.length === 0 ? null : ends.reduce((latest, end) => Math.max(latest, end), 0);
  const lateness = orders.map((order) => order.lateSeconds);
  return {
    orders: orders.length,
    onTime: count("on time"),
    late: count("late"),
    unplanned: count("unplanned") + count("partly planned"),
    coveredByStock: count("covered by stock"),
    tardinessHours: inHours(lateness.reduce((sum, seconds) => sum + seconds, 0)),
    worstLateHours: inHours(lateness.reduce((worst, seconds) => Math.max(worst, seconds), 0)),
    changes: changes.length,
    changeHours: inHours(specs.reduce((sum, spec) => sum + spec.tailSeconds, teamSeconds)),
    teamHours: inHours(teamSeconds),
    utilisation: last === null ? 0 : utilisationUntil(assembled, plan, last),
    makespanEnd: last === null ? null : isoInstant(last),
  };
}

function utilisationUntil(assembled: Assembled, plan: Plan, end: number): number {
  const { start } = assembled.problem.horizon;
  const lines = describeLines(assembled, plan, { start, end }).map((line) => line.utilisation);
  const run = lines.reduce((sum, line) => sum + line.runSeconds, 0);
  const open = lines.reduce(
    (sum, line) => sum + line.runSeconds + line.changeSeconds + line.stopSeconds + line.idleSeconds,
    0,
  );
  return open === 0 ? 0 : Math.round((run / open) * 10_000) / 10_000;
}
