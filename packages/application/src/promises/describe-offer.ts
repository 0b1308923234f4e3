import { addWorking } from "@formweek/capacity-model";
import type { ChangeSegment, ObjectiveBreakdown, PromisedLot, PromisedOrder } from "@formweek/scheduler";
import { isoInstant } from "../planning/iso-instant.ts";
import type { DocumentMould } from "../planning/plan-document.ts";
import type { ShiftAdded } from "../planning/plan-edit.ts";
import type { PlantFrame } from "../planning/plant-frame.ts";
import type { OfferKind } from "../ports/hold-repository.ts";
import type {
  DisplacedForPromise,
  Offer,
  PromisedChange,
  PromisedPart,
  PromisedRate,
  PromisePrice,
} from "./promise-answer.ts";
import type { StandingDesk } from "./standing-desk.ts";
import type { UnderstoodWish } from "./understand.ts";

/** What an offer is besides the engine's promise. */
export interface OfferTerms {
  readonly kind: OfferKind;
  readonly wish: UnderstoodWish;
  /** Good pieces to make. */
  readonly goodPieces: number;
  /** What it adds to the cost of the plan that stands. */
  readonly price: ObjectiveBreakdown;
  /** The shift that must be added first, and the plant in its hours; null: none. */
  readonly shift: { readonly added: ShiftAdded; readonly frame: PlantFrame } | null;
}

/** Kinds that whoever asks may hold: parts are held one by one; hours and other orders are a planner's to give. */
const HOLDABLE: ReadonlySet<OfferKind> = new Set(["whole", "split"]);

/** The engine's promise as an offer with names. */
export function describeOffer(standing: StandingDesk, promise: PromisedOrder, terms: OfferTerms): Offer {
  const { kind, wish, price, shift } = terms;
  const frame = shift?.frame ?? standing.frame;
  const good = goodPiecesOf(promise.lots, terms);
  const parts = promise.lots.map((lot, index) =>
    describePart({ standing, frame, promise, wish }, lot, good[index] ?? 0),
  );
  const promised = Math.max(...parts.map((part) => instant(part.promised)));
  return {
    kind,
    finish: isoInstant(promise.finish),
    promised: isoInstant(promised),
    slackSeconds: wish.wantedAt === null ? null : wish.wantedAt - promised,
    parts,
    moved: promise.moved.map(({ startBefore, start, endBefore, end, ...run }) => ({
      ...run,
      startBefore: isoInstant(startBefore),
      start: isoInstant(start),
      endBefore: isoInstant(endBefore),
      end: isoInstant(end),
    })),
    displaced: displacedOf(standing, promise),
    price: priceOf(price),
    shift: shift?.added ?? null,
    holdable: HOLDABLE.has(kind) && standing.unplannedHolds.length === 0,
  };
}

const instant = (text: string): number => Date.parse(text) / 1000;

/** Good pieces of each lot: the scrap of the whole order is shared out by what each forms. */
function goodPiecesOf(lots: readonly PromisedLot[], { goodPieces }: OfferTerms): readonly number[] {
  const all = lots.reduce((sum, { pieces }) => sum + pieces, 0);
  const shares = lots.map(({ pieces }) => Math.floor((pieces * goodPieces) / all));
  const rest = goodPieces - shares.reduce((sum, share) => sum + share, 0);
  return shares.map((share, index) => (index === shares.length - 1 ? share + rest : share));
}

interface PartContext {
  readonly standing: StandingDesk;
  readonly frame: PlantFrame;
  readonly promise: PromisedOrder;
  readonly wish: UnderstoodWish;
}

function describePart(context: PartContext, lot: PromisedLot, goodPieces: number): PromisedPart {
  const { standing, frame, promise, wish } = context;
  const { plant } = frame;
  const sheet = plant.sheets.find(({ id }) => id === wish.product.sheetId);
  const mould = plant.moulds.find(({ id }) => id === lot.mould?.mouldId);
  const rate = rateOf(context, lot);
  const extra = rate.basis.kind === "computed" ? rate.basis.marginShare : 0;
  const { conditioningSeconds } = promise.order;
  return {
    pieces: lot.pieces,
    goodPieces,
    lineId: lot.lineId,
    lineName: plant.lines.find(({ id }) => id === lot.lineId)?.name ?? lot.lineId,
    mould: mouldOf(lot.mould),
    mouldName: mould?.name ?? lot.mould?.mouldId ?? "",
    sheetId: wish.product.sheetId,
    sheetName: sheet?.name ?? wish.product.sheetId,
    start: isoInstant(lot.start),
    end: isoInstant(lot.end),
    finish: isoInstant(lot.finish),
    promised: isoInstant(withMargin(context, lot, extra) + conditioningSeconds),
    shift: shiftAt(frame, lot.lineId, lot.start),
    rate,
    change: lot.changeBefore === null ? null : changeOf(standing, lot.changeBefore),
  };
}

/** End of the run if it takes the margin longer, in the line's working time; past the horizon by the clock. */
function withMargin({ frame, promise }: PartContext, lot: PromisedLot, share: number): number {
  const option = promise.order.options.find(
    (each) => each.lineId === lot.lineId && each.setupId === lot.setupId,
  );
  const seconds = Math.ceil(lot.pieces * (option?.secondsPerPiece ?? 0) * share - 1e-9);
  if (seconds <= 0) return lot.end;
  const line = frame.problem.lines.find(({ id }) => id === lot.lineId);
  const end = line === undefined ? null : addWorking(line.workingTime, lot.end, seconds);
  return end ?? lot.end + seconds;
}

function rateOf({ standing, promise, wish }: PartContext, lot: PromisedLot): PromisedRate {
  const { margins, frame } = standing;
  const mouldId = lot.mould?.mouldId ?? frame.problem.setups.find(({ id }) => id === lot.setupId)?.mouldId;
  const ids = { lineId: lot.lineId, mouldId: mouldId ?? "", productId: wish.product.id };
  const rate = margins.rateOf(ids);
  if (rate === null) throw new Error(`${promise.order.orderId} is promised on ${lot.lineId} without a rate`);
  return rate;
}

/** Name of the shift of a line in which an instant lies; one that is added comes first. */
function shiftAt({ plant, calendars, extraShifts }: PlantFrame, lineId: string, at: number): string | null {
  const within = ({ start, end }: { readonly start: number; readonly end: number }): boolean =>
    start <= at && at < end;
  const extra = extraShifts.get(lineId)?.find(within);
  if (extra !== undefined) return extra.name;
  const line = plant.lines.find(({ id }) => id === lineId);
  if (line === undefined) return null;
  return calendars.byId.get(line.calendarId)?.shifts.find(within)?.name ?? null;
}

function changeOf({ frame, assembled }: StandingDesk, change: ChangeSegment): PromisedChange {
  const spec = assembled.problem.changes[change.changeSpec];
  const seconds = spec === undefined ? 0 : spec.dismountSeconds + spec.mountSeconds + spec.tailSeconds;
  const team = frame.plant.setterTeams.find(({ id }) => id === change.teamId);
  return {
    start: isoInstant(change.start),
    end: isoInstant(change.end),
    minutes: Math.round(seconds / 6) / 10,
    teamId: change.teamId,
    teamName: team?.name ?? change.teamId,
    mouldIn: mouldOf(change.mouldIn),
    mouldOut: mouldOf(change.mouldOut),
  };
}

/** People count copies of a mould from 1. */
const mouldOf = (mould: PromisedLot["mould"]): DocumentMould | null =>
  mould === null ? null : { mouldId: mould.mouldId, copy: mould.copy + 1 };

function displacedOf({ orders }: StandingDesk, { displaced }: PromisedOrder): readonly DisplacedForPromise[] {
  const known = new Map<string, (typeof orders)[number]>(orders.map((order) => [order.id, order]));
  return displaced.map(({ orderId, by, finishBefore, finish }) => {
    const order = known.get(orderId);
    return {
      orderId,
      customer: order?.customer ?? "",
      kind: order?.kind ?? "firm",
      weight: order?.weight ?? 1,
      by: isoInstant(by),
      finishBefore: isoInstant(finishBefore),
      finish: isoInstant(finish),
    };
  });
}

/** Amounts below it come from rounding. */
const NOTHING = 1e-6;

/** Costs term by term, those that are nothing left out. */
function priceOf({ terms, total }: ObjectiveBreakdown): PromisePrice {
  const hours = (name: string): number => terms.find((term) => term.name === name)?.amount ?? 0;
  const minutes = (name: string): number => Math.round(hours(name) * 600) / 10;
  return {
    cost: rounded(total),
    terms: terms
      .filter(({ amount }) => Math.abs(amount) > NOTHING)
      .map(({ name, unit, amount, cost }) => ({ name, unit, amount: rounded(amount), cost: rounded(cost) })),
    changeMinutes: minutes("change time"),
    overtimeMinutes: minutes("overtime"),
  };
}

/** To a ten-thousandth, so that sums of fractions do not show. */
const rounded = (value: number): number => Math.round(value * 10_000) / 10_000;
