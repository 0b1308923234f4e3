import type { PlanDocument, PlanSegment } from "@formweek/contracts";

type PlanOrder = PlanDocument["orders"][number];
type PlanLine = PlanDocument["lines"][number];

/** A segment of the plan with its place on the board; times are seconds since the epoch. */
export interface BoardSegment {
  /** Position in `BoardPlan.segments`. */
  readonly index: number;
  readonly lineIndex: number;
  /** Position among the line's segments. */
  readonly place: number;
  readonly start: number;
  readonly end: number;
  readonly source: PlanSegment;
  /** Set on the run with the last piece of an order. */
  readonly ending: OrderEnding | null;
}

/** Where an order ends: its due instant, its finish (conditioning included), and lateness in seconds, 0 when on time. */
export interface OrderEnding {
  readonly due: number;
  readonly finish: number;
  readonly lateSeconds: number;
}

export interface BoardSpell {
  readonly start: number;
  readonly end: number;
}

export interface BoardLine {
  readonly index: number;
  readonly id: string;
  readonly name: string;
  readonly source: PlanLine;
  /** Time used by runs and changes over open time, 0 … 1; 0 when never open. */
  readonly usedShare: number;
  /** Working spells in order of time. */
  readonly open: readonly BoardSpell[];
  readonly closures: readonly (BoardSpell & { readonly reason: string })[];
  /** Shifts worked once, on top of the weekly ones, in order of time. */
  readonly extraShifts: readonly (BoardSpell & { readonly name: string })[];
  /** In order of time; they never overlap. */
  readonly segments: readonly BoardSegment[];
}

/** The plan as the board reads it: lines with sorted segments, look-ups by order. Built once a plan. */
export interface BoardPlan {
  readonly planId: string;
  readonly document: PlanDocument;
  readonly startAt: number;
  readonly endAt: number;
  /** End of the time for which the document tells when lines work. */
  readonly knownEndAt: number;
  readonly lines: readonly BoardLine[];
  readonly segments: readonly BoardSegment[];
  readonly orders: ReadonlyMap<string, PlanOrder>;
  /** When each order is due. */
  readonly dues: ReadonlyMap<string, number>;
  /** Runs of each order, in order of time. */
  readonly runsOfOrder: ReadonlyMap<string, readonly BoardSegment[]>;
  /** Order numbers of late orders, latest first. */
  readonly lateOrderIds: readonly string[];
}

export function secondsOf(isoInstant: string): number {
  return Math.floor(Date.parse(isoInstant) / 1000);
}

/** A segment of a document with its times read, seconds since the epoch. */
export interface TimedSegment {
  readonly start: number;
  readonly end: number;
  readonly source: PlanSegment;
}

/** Spells of a document in seconds. */
export function spellsOf(spells: readonly (readonly [start: string, end: string])[]): readonly BoardSpell[] {
  return spells.map(([start, end]) => ({ start: secondsOf(start), end: secondsOf(end) }));
}

/** Reads a plan document for the board. Segments of lines that the document does not list are left out. */
export function boardPlan(planId: string, document: PlanDocument): BoardPlan {
  const timed = document.segments.map((source) => ({
    start: secondsOf(source.start),
    end: secondsOf(source.end),
    source,
  }));
  return boardPlanOf(planId, document, timed);
}

/**
 * As `boardPlan`, of a document whose segments have been read already; what `like`, another plan of the same lines and orders,
 * has read of the lines' hours and the orders' due dates is not read again.
 */
export function boardPlanOf(
  planId: string,
  document: PlanDocument,
  timed: readonly TimedSegment[],
  like: BoardPlan | null = null,
): BoardPlan {
  const dues = like?.dues ?? new Map(document.orders.map(({ orderId, due }) => [orderId, secondsOf(due)]));
  const orders = new Map(document.orders.map((order) => [order.orderId, order]));
  const lastRuns = lastRunOfOrders(timed);
  const byLine = new Map<string, TimedSegment[]>(document.lines.map((line) => [line.id, []]));
  for (const segment of timed) byLine.get(segment.source.lineId)?.push(segment);

  const segments: BoardSegment[] = [];
  const lines = document.lines.map((line, lineIndex): BoardLine => {
    const sorted = (byLine.get(line.id) ?? []).sort((a, b) => a.start - b.start);
    const own = sorted.map(({ start, end, source }, place): BoardSegment => {
      const order =
        source.kind === "run" && lastRuns.get(source.orderId)?.source === source
          ? orders.get(source.orderId)
          : undefined;
      const ending =
        order === undefined ? null : endingOf(order, dues.get(order.orderId) ?? secondsOf(order.due), end);
      const segment = { index: segments.length, lineIndex, place, start, end, source, ending };
      segments.push(segment);
      return segment;
    });
    const known = like?.document.lines === document.lines ? like.lines[lineIndex] : undefined;
    return {
      index: lineIndex,
      id: line.id,
      name: line.name,
      source: line,
      usedShare: usedShareOf(line),
      open: known?.open ?? spellsOf(line.open),
      closures:
        known?.closures ??
        line.closures.map(({ start, end, reason }) => ({
          start: secondsOf(start),
          end: secondsOf(end),
          reason,
        })),
      extraShifts:
        known?.extraShifts ??
        line.extraShifts.map(({ start, end, name }) => ({
          start: secondsOf(start),
          end: secondsOf(end),
          name,
        })),
      segments: own,
    };
  });
  const startAt = secondsOf(document.horizon.start);
  const lastWorkAt = timed.reduce((last, { end }) => Math.max(last, end), startAt);
  return {
    planId,
    document,
    startAt,
    endAt: boardEndAt(document, dues, { startAt, lastWorkAt }),
    knownEndAt: knownEndAt(document, lines, lastWorkAt),
    lines,
    segments,
    orders,
    dues,
    runsOfOrder: runsOfOrders(segments),
    lateOrderIds: document.orders
      .filter((order) => order.lateSeconds > 0)
      .sort((a, b) => b.lateSeconds - a.lateSeconds || (a.orderId < b.orderId ? -1 : 1))
      .map((order) => order.orderId),
  };
}

/** The board ends with the last work or due date, a day after it; never before two days, never after the horizon. */
function boardEndAt(
  document: PlanDocument,
  dues: BoardPlan["dues"],
  { startAt, lastWorkAt }: { readonly startAt: number; readonly lastWorkAt: number },
): number {
  let last = Math.max(startAt + 2 * 86_400, lastWorkAt);
  for (const due of dues.values()) last = Math.max(last, due);
  return Math.min(last + 86_400, Math.max(secondsOf(document.horizon.end), last));
}

/** Working spells are told up to the last work, which may be long before the horizon ends. */
function knownEndAt(document: PlanDocument, lines: readonly BoardLine[], lastWorkAt: number): number {
  let last = lastWorkAt;
  for (const line of lines) for (const { end } of line.open) last = Math.max(last, end);
  return Math.min(last, secondsOf(document.horizon.end));
}

function endingOf(order: PlanOrder, due: number, runEnd: number): OrderEnding {
  return {
    due,
    finish: order.finish === null ? runEnd : secondsOf(order.finish),
    lateSeconds: order.lateSeconds,
  };
}

function usedShareOf(line: PlanLine): number {
  const { runSeconds, changeSeconds, stopSeconds, idleSeconds } = line.utilisation;
  const open = runSeconds + changeSeconds + stopSeconds + idleSeconds;
  return open === 0 ? 0 : (runSeconds + changeSeconds) / open;
}

function lastRunOfOrders(timed: readonly TimedSegment[]): ReadonlyMap<string, TimedSegment> {
  const last = new Map<string, TimedSegment>();
  for (const segment of timed) {
    if (segment.source.kind !== "run") continue;
    const known = last.get(segment.source.orderId);
    if (known === undefined || segment.end > known.end) last.set(segment.source.orderId, segment);
  }
  return last;
}

function runsOfOrders(segments: readonly BoardSegment[]): ReadonlyMap<string, readonly BoardSegment[]> {
  const runs = new Map<string, BoardSegment[]>();
  for (const segment of segments) {
    if (segment.source.kind !== "run") continue;
    const known = runs.get(segment.source.orderId);
    if (known === undefined) runs.set(segment.source.orderId, [segment]);
    else known.push(segment);
  }
  for (const own of runs.values()) own.sort((a, b) => a.start - b.start || a.index - b.index);
  return runs;
}
