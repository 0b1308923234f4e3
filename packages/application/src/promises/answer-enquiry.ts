import type { Job, OpenDesk, PromiseAnswer, PromiseRefusal, PromisedOrder } from "@formweek/scheduler";
import { problemFaulty } from "../jobs/solve-refusals.ts";
import { demandOf, jobOf } from "../planning/assemble-problem.ts";
import { isoInstant } from "../planning/iso-instant.ts";
import { type Result, ok, refused } from "../result.ts";
import { describeOffer } from "./describe-offer.ts";
import { offersFrom } from "./offers-from.ts";
import type { AnsweredEnquiry, Enquiry, PromiseQuantity, PromiseReason } from "./promise-answer.ts";
import { planOver } from "./promise-refusals.ts";
import { nettedBehind, quantityOf } from "./quantity.ts";
import { type StandingDesk, startingFrom } from "./standing-desk.ts";
import { ENQUIRY_ID, type UnderstoodWish, asUnderstood, orderOf, understand } from "./understand.ts";

/** An enquiry ready for the engine. */
export interface AskedJob {
  readonly wish: UnderstoodWish;
  readonly quantity: PromiseQuantity;
  /** Nothing of it begins before; instant, seconds. */
  readonly from: number;
  /** Null: all of it comes from stock. */
  readonly job: Job | null;
}

/** Instant before which the desk offers nothing, if its plan is not over. */
export function askedFrom({ frame }: StandingDesk, now: number): Result<number> {
  const from = offersFrom(frame, now);
  return from < frame.window.end ? ok(from) : refused(planOver(frame.plant.timeZone, frame.window.end));
}

/** Reads an enquiry and nets it behind all other orders. `orderId`: what it is called on the desk. */
export function asked(
  standing: StandingDesk,
  enquiry: Enquiry,
  { from, orderId = ENQUIRY_ID }: { readonly from: number; readonly orderId?: string },
): Result<AskedJob> {
  const wish = understand(enquiry, standing, from);
  return wish.ok ? ok(askedFor(standing, wish.value, { from, orderId })) : wish;
}

/** The same for a wish that is understood. */
export function askedFor(
  standing: StandingDesk,
  wish: UnderstoodWish,
  { from, orderId }: { readonly from: number; readonly orderId: string },
): AskedJob {
  const { frame } = standing;
  const dueAt = wish.wantedAt ?? frame.window.end;
  const enquired = orderOf(wish, { id: "enquiry", customer: "—", dueAt, earliestStartAt: from });
  const made = nettedBehind(enquired, wish.product, standing);
  const job = jobOf(frame, demandOf(enquired, made));
  return {
    wish,
    quantity: quantityOf(made, wish.product),
    from,
    job: job === null ? null : { ...startingFrom(job, from), orderId },
  };
}

/**
 * The earliest promise of a job. Without a wanted day it is asked again as due when it is finished, so that its price holds
 * neither lateness nor waiting.
 */
export function earliest(
  desk: OpenDesk,
  { job, wish }: { readonly job: Job; readonly wish: UnderstoodWish },
): PromiseAnswer {
  const answer = desk.promise(job);
  if (answer.status !== "promised" || wish.wantedAt !== null) return answer;
  return desk.promise({ ...job, dueAt: answer.promise.finish });
}

/** The answer to one enquiry on the desk: the earliest finish at which nobody becomes later than promised. */
export function answerEnquiry(
  standing: StandingDesk,
  enquiry: Enquiry,
  now: number,
): Result<AnsweredEnquiry> {
  const from = askedFrom(standing, now);
  if (!from.ok) return from;
  const ready = asked(standing, enquiry, { from: from.value });
  return ready.ok ? answerOf(standing, ready.value) : ready;
}

/** The same for an enquiry that is read. */
export function answerOf(standing: StandingDesk, ready: AskedJob): Result<AnsweredEnquiry> {
  const { wish, quantity, job, from } = ready;
  const read = { enquiry: asUnderstood(wish), quantity };
  if (job === null) {
    const promised = isoInstant(from);
    return ok({ ...read, outcome: { status: "from stock", promised } });
  }
  const answer = earliest(standing.desk, { job, wish });
  switch (answer.status) {
    case "faulty-order":
      return refused(problemFaulty(answer.faults));
    case "refused":
      return ok({ ...read, outcome: { status: "impossible", reasons: answer.reasons.map(reasonOf) } });
    case "promised":
      return ok({
        ...read,
        outcome: { status: "promised", offer: wholeOffer(standing, ready, answer.promise) },
      });
  }
}

/** The promise in one lot as an offer. */
export function wholeOffer(standing: StandingDesk, { wish, quantity }: AskedJob, promise: PromisedOrder) {
  const goodPieces = quantity.toMakePieces;
  return describeOffer(standing, promise, {
    kind: "whole",
    wish,
    goodPieces,
    price: promise.price,
    shift: null,
  });
}

/** A refusal of the engine with its cause apart from words. */
function reasonOf(refusal: PromiseRefusal): PromiseReason {
  if (!("orderId" in refusal)) return refusal;
  const { code, lineId, text, orderId, bySeconds } = refusal;
  return { code, lineId, text, cause: { kind: "delays another", orderId, bySeconds } };
}
