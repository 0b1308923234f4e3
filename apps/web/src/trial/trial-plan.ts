import type { MouldCopy as CopyOnWire, PlanDocument, PlanSegment, RunSegment } from "@formweek/contracts";
import type { MouldCopy, Plan, ProblemData, Segment } from "@formweek/scheduler";
import { wireText } from "../kernels/wall-text.ts";
import { boardPlanOf, secondsOf, type BoardPlan, type TimedSegment } from "../kernels/board-plan.ts";

/** A plan to be tried on, with what it is tried in. */
export interface TrialGround {
  readonly standing: BoardPlan;
  /** The problem that the plan solves. */
  readonly problem: ProblemData;
  /** Orders whose runs are frozen; they are pinned in the problem. */
  readonly frozenOrderIds: readonly string[];
  /** Name of a mould. */
  readonly mouldName: (mouldId: string) => string;
}

/** Names of the standing plan's runs, for the same orders elsewhere. */
type RunsByOrder = ReadonlyMap<string, RunSegment>;

/**
 * A plan that the engine made from the standing one, as the board shows it: times, changes, lateness and cost are new,
 * names are those of the standing plan. What only the server works out (why an order is late, the tasks of a change,
 * how a line is used) is left out or stands as it was; and so are runs of orders that the standing plan does not run.
 */
export function trialPlan(ground: TrialGround, plan: Plan): BoardPlan {
  const { standing, problem } = ground;
  const { document } = standing;
  const runs = runsOf(document);
  const orders = ordersOf(document, plan);
  const late = new Map(orders.map((order) => [order.orderId, order.lateSeconds]));
  const timed = plan.segments.flatMap((segment): TimedSegment[] => {
    const source = segmentOf(segment, { ground, runs, late });
    return source === null ? [] : [{ start: segment.start, end: segment.end, source }];
  });
  const tried = {
    ...document,
    segments: timed.map(({ source }) => source),
    lots: plan.lots.map((lot) => ({
      ...lot,
      start: iso(lot.start),
      end: iso(lot.end),
      finish: iso(lot.finish),
    })),
    orders,
    unplanned: plan.unplanned.map(({ orderId, reasons }) => ({ orderId, reasons: [...reasons] })),
    late: [],
    objective: { terms: [...plan.objective.terms], total: plan.objective.total },
    bound: null,
    summary: summaryOf(document, orders, problem, plan),
  };
  return boardPlanOf(`${standing.planId} tried`, tried, timed);
}

function runsOf(document: PlanDocument): RunsByOrder {
  const runs = new Map<string, RunSegment>();
  for (const segment of document.segments) if (segment.kind === "run") runs.set(segment.orderId, segment);
  return runs;
}

function ordersOf(document: PlanDocument, plan: Plan): PlanDocument["orders"] {
  const finishes = new Map<string, number>();
  for (const { orderId, finish } of plan.lots)
    finishes.set(orderId, Math.max(finishes.get(orderId) ?? finish, finish));
  return document.orders.map((order) => {
    if (order.state === "covered by stock") return order;
    const finish = finishes.get(order.orderId);
    if (finish === undefined)
      return { ...order, state: "unplanned", finish: null, lateSeconds: 0, slackSeconds: null };
    const due = secondsOf(order.due);
    const lateSeconds = Math.max(0, finish - due);
    const state = lateSeconds > 0 ? "late" : "on time";
    return { ...order, state, finish: iso(finish), lateSeconds, slackSeconds: due - finish };
  });
}

interface Known {
  readonly ground: TrialGround;
  readonly runs: RunsByOrder;
  /** Lateness of each order, seconds. */
  readonly late: ReadonlyMap<string, number>;
}

function segmentOf(segment: Segment, { ground, runs, late }: Known): PlanSegment | null {
  const placed = { lineId: segment.lineId, start: iso(segment.start), end: iso(segment.end) };
  switch (segment.kind) {
    case "stop":
      return { kind: "stop", ...placed, reason: segment.reason, orderId: segment.orderId, lot: segment.lot };
    case "run": {
      const known = runs.get(segment.orderId);
      if (known === undefined) return null;
      const mould = copyOf(segment.mould);
      const mouldName = mould === null ? "" : ground.mouldName(mould.mouldId);
      const { lot, setupId, pieces } = segment;
      const lateSeconds = late.get(segment.orderId) ?? 0;
      return { ...known, ...placed, lot, setupId, pieces, mould, mouldName, lateSeconds };
    }
    case "change": {
      const spec = ground.problem.changes[segment.changeSpec];
      return {
        kind: "change",
        ...placed,
        mountStart: iso(segment.mountStart),
        tailStart: iso(segment.tailStart),
        stripping: segment.stripping,
        teamId: segment.teamId,
        trolleyId: segment.trolleyId,
        fromSetupId: segment.fromSetupId,
        toSetupId: segment.toSetupId,
        mouldOut: copyOf(segment.mouldOut),
        mouldIn: copyOf(segment.mouldIn),
        minutes: spec === undefined ? 0 : Math.round(workOf(spec) / 6) / 10,
        scrapKg: spec?.scrapKg ?? 0,
        tasks: [],
      };
    }
  }
}

function summaryOf(
  { summary }: PlanDocument,
  orders: PlanDocument["orders"],
  problem: ProblemData,
  plan: Plan,
): PlanDocument["summary"] {
  const count = (state: PlanDocument["orders"][number]["state"]): number =>
    orders.filter((order) => order.state === state).length;
  const changes = plan.segments.filter((segment) => segment.kind === "change");
  const specs = changes.flatMap(({ changeSpec }) => problem.changes[changeSpec] ?? []);
  const inHours = (seconds: number): number => Math.round(seconds / 36) / 100;
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  const lateness = orders.map((order) => order.lateSeconds);
  return {
    ...summary,
    onTime: count("on time"),
    late: count("late"),
    unplanned: count("unplanned") + count("partly planned"),
    tardinessHours: inHours(sum(lateness)),
    worstLateHours: inHours(lateness.reduce((worst, seconds) => Math.max(worst, seconds), 0)),
    changes: changes.length,
    changeHours: inHours(sum(specs.map(workOf))),
    teamHours: inHours(sum(specs.map((spec) => spec.dismountSeconds + spec.mountSeconds))),
  };
}

function workOf(spec: ProblemData["changes"][number]): number {
  return spec.dismountSeconds + spec.mountSeconds + spec.tailSeconds;
}

function copyOf(copy: MouldCopy | null): CopyOnWire | null {
  return copy === null ? null : { mouldId: copy.mouldId, copy: copy.copy + 1 };
}

const written = new Map<number, string>();
const mostWritten = 100_000;

/** An instant as plans are written; from one trial to the next most are the same, and writing them anew would take as long as trying. */
function iso(instant: number): string {
  const known = written.get(instant);
  if (known !== undefined) return known;
  if (written.size >= mostWritten) written.clear();
  const text = wireText(instant);
  written.set(instant, text);
  return text;
}
