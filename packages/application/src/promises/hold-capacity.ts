import type { Order } from "@formweek/capacity-model";
import { type Job, type PromisedOrder, finishWork } from "@formweek/scheduler";
import type { Actor } from "../actor.ts";
import { type AppError, type FieldFault, appError } from "../errors.ts";
import { isoInstant } from "../planning/iso-instant.ts";
import type { PlanDocument } from "../planning/plan-document.ts";
import type { OfferKind, StoredHold } from "../ports/hold-repository.ts";
import type { Ports } from "../ports/ports.ts";
import { type Result, ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { type AskedJob, askedFor } from "./answer-enquiry.ts";
import { describeOffer } from "./describe-offer.ts";
import type { DeskKeeper } from "./desk-keeper.ts";
import type { KeptDesk } from "./kept-desk.ts";
import { type HeldCapacity, describeHold, holdContextOf } from "./held-capacity.ts";
import { documentWith, withHeld } from "./hold-plan.ts";
import { heldFrom } from "./offers-from.ts";
import type { Enquiry, Offer } from "./promise-answer.ts";
import type { PromiseQueue } from "./promise-queue.ts";
import {
  holdKeyUsed,
  holdsNotPlanned,
  offerGone,
  planOver,
  promiseMoved,
  shown,
} from "./promise-refusals.ts";
import type { StandingDesk } from "./standing-desk.ts";
import { orderOf, understand } from "./understand.ts";
import { type Attempt, RACED, addHoldStep, areStill, untilFirst } from "./write-holds.ts";

export interface HoldInput extends PlantInput {
  /** Chosen by who asks, one for each hold that is wanted. */
  readonly key: string;
  readonly enquiry: Enquiry;
  readonly kind: OfferKind;
  /** Instant, seconds: what the customer was told. */
  readonly promised: number;
  readonly customer: string;
  /** Instant, seconds: the hold runs out then. */
  readonly until: number;
}

export interface HoldWritten {
  /** Of the list of holds. */
  readonly revision: number;
  readonly hold: HeldCapacity;
}

/** A hold lasts no longer. */
const LONGEST_HOLD_SECONDS = 30 * 86_400;

/**
 * Takes the capacity of an offer for everyone: the order joins what is planned, its run the working plan, in one transaction. The
 * promise is worked out again on what stands by then; where it has become later than the customer was told, nothing is held.
 */
export const holdCapacity = (desks: DeskKeeper, queue: PromiseQueue): UseCase<HoldInput, HoldWritten> => ({
  role: "sales",
  run: (ports, input, actor) =>
    queue.run(input.plantId, () => untilFirst(ports, () => tryToHold({ ports, desks, actor }, input))),
});

interface Holding {
  readonly ports: Ports;
  readonly desks: DeskKeeper;
  readonly actor: Actor;
}

async function tryToHold({ ports, desks, actor }: Holding, input: HoldInput): Promise<Attempt<HoldWritten>> {
  const { plantId } = input;
  const wish = wishOf(input);
  const earlier = await heldBefore(ports, input, wish);
  if (earlier !== null) return earlier;
  const opened = await desks.open(ports, plantId);
  if (!opened.ok) return opened;
  const kept = opened.value;
  const prepared = prepare(kept, input, { ports, actor, wish });
  if (!prepared.ok) return prepared;
  const { hold, document } = prepared.value;
  return ports.store.write<HoldWritten, AppError | typeof RACED>(async (repositories) => {
    if (!(await areStill(repositories, plantId, kept.revisions))) return refused(RACED);
    const revision = await repositories.holds.insert(plantId, hold, kept.revisions.holds);
    if (revision === null) return refused(RACED);
    const change = { kind: "hold", orderId: hold.order.id, customer: hold.order.customer } as const;
    const { planId: parentId } = kept.standing;
    await addHoldStep(ports, repositories, { plantId, parentId, change, document, by: actor.id });
    const told = { type: "holds-changed", revision, holdId: hold.id, state: "held" } as const;
    await repositories.events.append(plantId, hold.heldAt, told);
    return ok({ revision, hold: described(hold, kept.standing, document) });
  });
}

/** What was held with the key before, or that the key is another hold's; null: it is new. */
async function heldBefore(
  { store }: Pick<Ports, "store">,
  { plantId, key }: HoldInput,
  wish: string,
): Promise<Result<HoldWritten> | null> {
  return store.read(async (repositories) => {
    const hold = await repositories.holds.withKey(plantId, key);
    if (hold === null) return null;
    if (hold.wish !== wish) return refused(holdKeyUsed);
    const { revision } = await repositories.holds.list(plantId);
    return ok({ revision, hold: describeHold(hold, await holdContextOf(repositories, plantId)) });
  });
}

function described(hold: StoredHold, { frame }: StandingDesk, plan: PlanDocument): HeldCapacity {
  const productNames = new Map<string, string>(frame.plant.products.map(({ id, name }) => [id, name]));
  return describeHold(hold, { productNames, plan });
}

/** All that is wished for, as text: a key stands for one wish. */
function wishOf({ enquiry, kind, promised, customer, until }: HoldInput): string {
  const { product, pieces, wanted, partsAllowed } = enquiry;
  return JSON.stringify([product, pieces, wanted, partsAllowed, kind, promised, customer, until]);
}

interface Prepared {
  readonly hold: StoredHold;
  readonly document: PlanDocument;
}

interface HoldMaking {
  readonly ports: Ports;
  readonly actor: Actor;
  readonly wish: string;
}

/** The hold and the plan with its run, or why there is neither. */
function prepare(kept: KeptDesk, input: HoldInput, { ports, actor, wish }: HoldMaking): Result<Prepared> {
  const { standing, revisions } = kept;
  const { frame, unplannedHolds } = standing;
  const now = ports.clock.now();
  const fault = termsFault(input, standing, now);
  if (fault !== null) return refused(fault);
  if (unplannedHolds.length > 0) return refused(holdsNotPlanned(unplannedHolds));
  const from = heldFrom(frame, now);
  if (from >= frame.window.end) return refused(planOver(frame.plant.timeZone, frame.window.end));
  const read = understand(input.enquiry, standing, from);
  if (!read.ok) return read;
  const orderId = freeOrderId(standing, revisions.holds + 1);
  const ready = askedFor(standing, { ...read.value }, { from, orderId });
  const promise = ready.job === null ? null : promiseOf(standing, { ...ready, job: ready.job }, input);
  if (promise?.ok === false) return promise;
  if (promise === null && input.promised < from)
    return refused(stockMoved(frame.plant.timeZone, input, from));
  const order = orderOf(read.value, {
    id: orderId,
    customer: input.customer,
    dueAt: input.promised,
    earliestStartAt: from,
  });
  const stockPieces = ready.quantity.fromStockPieces;
  const plan = promise === null ? standing.desk.plan() : promise.value.plan();
  const records = withHeld(standing.records, order, stockPieces);
  const document = documentWith(standing, records, plan);
  if (!document.ok) return document;
  return ok({
    hold: storedHold(input, { order, stockPieces, now, id: ports.ids.next(), by: actor.id, wish }),
    document: document.value,
  });
}

interface HoldFacts {
  readonly order: Order;
  readonly stockPieces: number;
  readonly now: number;
  readonly id: string;
  readonly by: string;
  readonly wish: string;
}

function storedHold(
  { key, kind, until }: HoldInput,
  { order, stockPieces, now, id, by, wish }: HoldFacts,
): StoredHold {
  return { id, key, wish, order, stockPieces, kind, until, heldBy: by, heldAt: now, ending: null };
}

/** The promise of the kind that was chosen, no later than the customer was told. */
function promiseOf(
  standing: StandingDesk,
  ready: AskedJob & { readonly job: Job },
  { kind, promised }: HoldInput,
): Result<PromisedOrder> {
  const job = { ...ready.job, dueAt: promised };
  if (kind === "split" && !ready.wish.partsAllowed)
    return refused(offerGone(kind, "The order may not be delivered in parts: it is made in one run."));
  const found = chosen(standing, job, kind);
  if (!found.ok) return found;
  const { wish, quantity } = ready;
  const goodPieces = quantity.toMakePieces;
  const terms = { kind, wish, goodPieces, price: found.value.price, shift: null };
  const offer: Offer = describeOffer(standing, found.value, terms);
  if (Date.parse(offer.promised) / 1000 <= promised) return found;
  return refused(promiseMoved(standing.frame.plant.timeZone, offer, promised));
}

/** What is on the shelf is ready at once, but no earlier. */
function stockMoved(timeZone: string, { kind, promised }: HoldInput, from: number): AppError {
  const ready = isoInstant(from);
  return promiseMoved(timeZone, { kind, finish: ready, promised: ready }, promised);
}

function chosen({ desk }: StandingDesk, job: Job, kind: OfferKind): Result<PromisedOrder> {
  switch (kind) {
    case "whole": {
      const answer = desk.promise(job);
      return answer.status === "promised" ? ok(answer.promise) : refused(offerGone(kind, ""));
    }
    case "split": {
      const answer = finishWork(desk.splitOverLines(job));
      return answer.status === "promised" ? ok(answer.promise) : refused(offerGone(kind, ""));
    }
    case "first part":
      return refused(offerGone(kind, "Parts are held one by one: the first by its day, then the rest."));
    case "extra shift":
      return refused(
        offerGone(kind, "Its shift has to be added by a planner first; then the whole order can be held."),
      );
    case "displacing":
      return refused(offerGone(kind, "Others would become later: that is for a planner to decide."));
  }
}

/** What its run is called: numbered like no order of the book. */
function freeOrderId({ orders }: StandingDesk, number: number): string {
  const taken = new Set<string>(orders.map(({ id }) => id));
  let id = `H-${number}`;
  while (taken.has(id)) id = `${id}*`;
  return id;
}

/** What is wrong with the date told and the time of the hold. */
function termsFault({ until, promised }: HoldInput, { frame }: StandingDesk, now: number): AppError | null {
  const { plant, window } = frame;
  const latest = now + LONGEST_HOLD_SECONDS;
  const faults: FieldFault[] = [];
  if (until <= now)
    faults.push({
      path: "until",
      problem: `${shown(plant.timeZone, until)} is past.`,
      remedy: `Hold it until a later time, ${shown(plant.timeZone, latest)} at the latest.`,
    });
  if (until > latest)
    faults.push({
      path: "until",
      problem: `${shown(plant.timeZone, until)} is more than 30 days ahead.`,
      remedy: `Hold it until ${shown(plant.timeZone, latest)} at the latest, and order it by then.`,
    });
  if (promised > window.end)
    faults.push({
      path: "offer.promised",
      problem: `${shown(plant.timeZone, promised)} lies after ${shown(plant.timeZone, window.end)}, where the plan ends.`,
      remedy: "Name the date that was offered.",
    });
  if (faults.length === 0) return null;
  return appError(
    "invalid-input",
    {
      title: "It cannot be held so.",
      cause: faults.map(({ problem }) => problem).join(" "),
      remedy: faults.map(({ remedy }) => remedy).join(" "),
    },
    faults,
  );
}
