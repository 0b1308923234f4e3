import type { MouldCopy as CopyOnWire, PlanDocument, PlanSegment, RunSegment } from "@formweek/contracts";
import type { MouldCopy, Plan, PlannedLot, ProblemData, Segment } from "@formweek/scheduler";
import { wireText } from "../kernels/wall-text.ts";
import { boardPlanOf, secondsOf, type BoardPlan, type TimedSegment } from "../kernels/board-plan.ts";
import { isSamePlanned, isSameSegment } from "./same-segment.ts";

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

/** A segment of the engine with what was written of it. */
interface Written {
  readonly from: Segment;
  readonly timed: TimedSegment;
}

/** Writes plans that the engine made from the standing one as the board shows them. */
export type TrialWriter = (plan: Plan) => BoardPlan;

/**
 * Opens a writer for trials of the standing plan, `opened` as the engine times it: times, changes, lateness and cost are
 * new, names are those of the standing plan. What only the server works out (why an order is late, the tasks of a change,
 * how a line is used) is left out or stands as it was; and so are runs of orders that the standing plan does not run.
 * A move leaves most of a plan as it is: segments are written once, and again only where they differ.
 */
export function trialWriter(ground: TrialGround, opened: Plan): TrialWriter {
  const { standing, problem } = ground;
  const { document } = standing;
  const runs = runsOf(document);
  const latenessIn = (orders: readonly Order[]): ReadonlyMap<string, number> =>
    new Map(orders.map((order) => [order.orderId, order.lateSeconds]));
  const write = (segment: Segment, late: ReadonlyMap<string, number>): Written | null => {
    const source = segmentOf(segment, { ground, runs, late });
    return source === null
      ? null
      : { from: segment, timed: { start: segment.start, end: segment.end, source } };
  };
  const known = new Map<string, Written>();
  const openedOrders = ordersOf(standing, opened);
  const openedFinishes = finishesOf(opened);
  const openedLots = opened.lots.map(lotOnWire);
  const standingLate = latenessIn(openedOrders);
  for (const segment of opened.segments) {
    const written = write(segment, standingLate);
    if (written !== null) known.set(keyOf(segment), written);
  }
  return (plan) => {
    const orders = ordersOf(standing, plan, (orderId, place, finish) =>
      openedFinishes.get(orderId) === finish ? openedOrders[place] : undefined,
    );
    const late = latenessIn(orders);
    const timed: TimedSegment[] = [];
    for (const segment of plan.segments) {
      const before = known.get(keyOf(segment));
      const written =
        before !== undefined && isSameSegment(before.from, segment) && isAsLate(before.timed, late)
          ? before
          : write(segment, late);
      if (written !== null) timed.push(written.timed);
    }
    const tried = {
      ...document,
      segments: timed.map(({ source }) => source),
      lots: plan.lots.map((lot, place) => {
        const before = opened.lots[place];
        const isSame = before !== undefined && isSamePlanned(before, lot);
        return (isSame ? openedLots[place] : undefined) ?? lotOnWire(lot);
      }),
      orders: [...orders],
      unplanned: plan.unplanned.map(({ orderId, reasons }) => ({ orderId, reasons: [...reasons] })),
      late: [],
      objective: { terms: [...plan.objective.terms], total: plan.objective.total },
      bound: null,
      summary: summaryOf(document, orders, problem, plan),
    };
    return boardPlanOf(`${standing.planId} tried`, tried, timed, standing);
  };
}

/** Segments of one line begin one after the other. */
function keyOf({ lineId, start, kind }: Segment): string {
  return `${start} ${kind} ${lineId}`;
}

/** The order that runs is as late as it was when the run was written. */
function isAsLate({ source }: TimedSegment, late: ReadonlyMap<string, number>): boolean {
  return source.kind !== "run" || source.lateSeconds === (late.get(source.orderId) ?? 0);
}

function runsOf(document: PlanDocument): RunsByOrder {
  const runs = new Map<string, RunSegment>();
  for (const segment of document.segments) if (segment.kind === "run") runs.set(segment.orderId, segment);
  return runs;
}

function lotOnWire(lot: PlannedLot): PlanDocument["lots"][number] {
  return { ...lot, start: iso(lot.start), end: iso(lot.end), finish: iso(lot.finish) };
}

/** When each order that runs is finished. */
function finishesOf({ lots }: Plan): ReadonlyMap<string, number> {
  const finishes = new Map<string, number>();
  for (const { orderId, finish } of lots)
    finishes.set(orderId, Math.max(finishes.get(orderId) ?? finish, finish));
  return finishes;
}

type Order = PlanDocument["orders"][number];

/** The orders as a plan leaves them; `known` may have one that finishes at an instant (undefined: never) written already. */
function ordersOf(
  { document, dues }: BoardPlan,
  plan: Plan,
  known: (orderId: string, place: number, finish: number | undefined) => Order | undefined = () => undefined,
): readonly Order[] {
  const finishes = finishesOf(plan);
  return document.orders.map((order, place): Order => {
    if (order.state === "covered by stock") return order;
    const finish = finishes.get(order.orderId);
    const written = known(order.orderId, place, finish);
    if (written !== undefined) return written;
    if (finish === undefined)
      return { ...order, state: "unplanned", finish: null, lateSeconds: 0, slackSeconds: null };
    const due = dues.get(order.orderId) ?? secondsOf(order.due);
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
  orders: readonly Order[],
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
