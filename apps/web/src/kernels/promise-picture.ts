import type { Offer, PlanDocument, PlanSegment, PromisedPart, RunSegment } from "@formweek/contracts";
import {
  boardPlanOf,
  secondsOf,
  spellsOf,
  type BoardPlan,
  type BoardSpell,
  type TimedSegment,
} from "./board-plan.ts";
import { spellsInSight } from "./culling.ts";
import { wireText } from "./wall-text.ts";

/** No order goes by it: numbers of orders are trimmed. */
export const enquiryOrderId = " enquiry";

/** What the run of an enquiry looks like. */
export interface EnquiryLook {
  readonly productId: string;
  readonly productName: string;
  readonly colour: RunSegment["colour"];
}

export interface PromisePicture {
  /** The lines of the offer alone, with its runs among those that make way. */
  readonly plan: BoardPlan;
  readonly startAt: number;
  readonly endAt: number;
  /** Order numbers before and after the first run on its line; null: nothing. */
  readonly before: string | null;
  readonly after: string | null;
}

const leastMarginSeconds = 5 * 3600;

/** The plan of the lines that an offer runs on as it would be with it, and the stretch of time around it. */
export function promisePicture(
  document: PlanDocument,
  offer: Pick<Offer, "parts" | "moved">,
  look: EnquiryLook,
): PromisePicture {
  const { parts } = offer;
  const lines = document.lines.filter(({ id }) => parts.some(({ lineId }) => lineId === id));
  const segments = lines.flatMap(({ id, open }) => {
    const own = parts.filter(({ lineId }) => lineId === id);
    const standing = movedSegments(document, offer, id);
    const news = own.flatMap((part) => segmentsOfPart(part, spellsOf(open), look));
    return [...news, ...standing.flatMap((segment) => clear(segment, news))];
  });
  const plan = boardPlanOf("promise", { ...document, lines }, segments);
  const from = Math.min(...parts.map((part) => secondsOf(part.change?.start ?? part.start)));
  const to = Math.max(...parts.map(({ end }) => secondsOf(end)));
  const margin = Math.max(leastMarginSeconds, 0.6 * (to - from));
  const beside = parts[0] === undefined ? [] : runsBeside(plan, parts[0]);
  return {
    plan,
    startAt: from - margin,
    endAt: to + margin,
    before: beside[0] ?? null,
    after: beside[1] ?? null,
  };
}

/** What stands on a line, each lot as much earlier or later as the offer moves it; a change goes with the run that it is for. */
function movedSegments(
  { segments }: PlanDocument,
  { moved }: Pick<Offer, "moved">,
  lineId: string,
): readonly TimedSegment[] {
  const shifts = new Map(
    moved
      .filter((lot) => lot.lineId === lineId)
      .map((lot) => [keyOf(lot), secondsOf(lot.start) - secondsOf(lot.startBefore)]),
  );
  const own = segments.filter((segment) => segment.lineId === lineId);
  return own.map((source, place) => {
    const lot = own.slice(place).find(({ kind }) => kind !== "change");
    const shift = (lot !== undefined && lot.kind !== "change" ? shifts.get(keyOf(lot)) : undefined) ?? 0;
    return timed(source, secondsOf(source.start) + shift, secondsOf(source.end) + shift);
  });
}

const keyOf = ({ orderId, lot }: { readonly orderId: string; readonly lot: number }): string =>
  `${lot} ${orderId}`;

/** A part as the board has it: its change, and a stretch of running in each spell that the line works. */
function segmentsOfPart(
  part: PromisedPart,
  open: readonly BoardSpell[],
  look: EnquiryLook,
): readonly TimedSegment[] {
  const { change } = part;
  const [start, end] = [secondsOf(part.start), secondsOf(part.end)];
  const { from, to } = spellsInSight(open, start, end);
  const spells = open
    .slice(from, to)
    .map((spell) => ({ start: Math.max(start, spell.start), end: Math.min(end, spell.end) }))
    .filter((spell) => spell.end > spell.start);
  const runs = (spells.length === 0 ? [{ start, end }] : spells).map((spell) =>
    timed(runOf(part, look), spell.start, spell.end),
  );
  if (change === null) return runs;
  const [changeStart, changeEnd] = [secondsOf(change.start), secondsOf(change.end)];
  return [timed(changeOf(part, change), changeStart, changeEnd), ...runs];
}

function runOf(part: PromisedPart, look: EnquiryLook): PlanSegment {
  const { lineId, start, end, mould, mouldName, sheetId, sheetName, pieces } = part;
  return {
    kind: "run",
    ...look,
    ...{ lineId, start, end, mould, mouldName, sheetId, sheetName, pieces },
    orderId: enquiryOrderId,
    lot: 0,
    customer: "",
    setupId: "",
    due: part.promised,
    lateSeconds: 0,
  };
}

function changeOf(
  { lineId }: PromisedPart,
  { start, end, minutes, teamId, mouldIn, mouldOut }: NonNullable<PromisedPart["change"]>,
): PlanSegment {
  return {
    kind: "change",
    ...{ lineId, start, end, minutes, teamId, mouldIn, mouldOut },
    mountStart: start,
    tailStart: end,
    stripping: false,
    trolleyId: null,
    fromSetupId: null,
    toSetupId: "",
    scrapKg: 0,
    tasks: [],
  };
}

/** The part of a segment that the news leave free: how long the next change becomes is not told. */
function clear(segment: TimedSegment, news: readonly TimedSegment[]): readonly TimedSegment[] {
  const hit = news.filter(({ start, end }) => start < segment.end && end > segment.start);
  if (hit.length === 0) return [segment];
  if (segment.source.kind !== "change") return [];
  const start = Math.max(...hit.map(({ end }) => end));
  return start < segment.end ? [{ ...segment, start }] : [];
}

function timed(source: PlanSegment, start: number, end: number): TimedSegment {
  return { source: { ...source, start: wireText(start), end: wireText(end) }, start, end };
}

/** Orders that run next before and after a part on its line. */
function runsBeside(
  plan: BoardPlan,
  { lineId, start }: PromisedPart,
): readonly [before: string | null, after: string | null] {
  const runs = (plan.lines.find(({ id }) => id === lineId)?.segments ?? []).flatMap((segment) =>
    segment.source.kind === "run" && segment.source.orderId !== enquiryOrderId
      ? [{ orderId: segment.source.orderId, start: segment.start }]
      : [],
  );
  const at = secondsOf(start);
  return [
    runs.findLast((run) => run.start < at)?.orderId ?? null,
    runs.find((run) => run.start >= at)?.orderId ?? null,
  ];
}
