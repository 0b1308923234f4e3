import { whyNotInPlan } from "../explain/why-unplanned.ts";
import type { UnplannedReason } from "../plan/plan.ts";
import type { Decoder } from "../timing/decoder.ts";
import { refuse, sayLot, type EditSubject, type Found } from "./refusal.ts";

/** The rule that keeps an order out of the plan timed last, on the line if one is named; none where none is known for sure. */
function reasonsFor(decoder: Decoder, job: number, lineId: string | null): readonly UnplannedReason[] {
  const reasons = whyNotInPlan(decoder, job);
  const reason = reasons.find((each) => each.lineId === lineId) ?? reasons[0];
  return reason === undefined ? [] : [reason];
}

const inWords = (...parts: readonly (string | UnplannedReason)[]): string =>
  parts.map((part) => (typeof part === "string" ? part : part.text)).join(" ");

/** A lot of the edited order finds no room. */
function ownRefusal(decoder: Decoder, subject: EditSubject, lot: number): Found<never> {
  const { jobs, lots, horizon } = decoder.problem;
  const job = lots.job[lot]!;
  const lotText = sayLot({ orderId: subject.orderId, lot: lot - lots.firstLot[job]! });
  const where = subject.lineId === null ? "in the plan" : `with this place on line ${subject.lineId}`;
  if (lots.fixedStart[lot]! >= 0)
    return refuse(subject, "held-at-start", {
      text: `${lotText} is held at a start that it cannot keep ${where}.`,
      remedy: "Free the order first, or choose a place at which it can keep its start.",
    });
  const reasons = reasonsFor(decoder, job, subject.lineId);
  return refuse(subject, "no-room", {
    text: inWords(`${lotText} finds no room ${where}.`, ...reasons),
    reasons,
    remedy:
      jobs.latestStart[job]! < horizon
        ? "Choose an earlier place or another line: it may not start after its latest start."
        : "Choose another place or line, or take another order out first.",
  });
}

/**
 * Why an edit cannot be that leaves lots without room in the plan timed last, at least one: the edited order's own, else the
 * first of another.
 */
export function noRoom(decoder: Decoder, subject: EditSubject, leftOut: readonly number[]): Found<never> {
  const { data, jobs, lots } = decoder.problem;
  const orderOf = (lot: number): string => data.jobs[lots.job[lot]!]!.orderId;
  const own = leftOut.find((lot) => orderOf(lot) === subject.orderId);
  if (own !== undefined) return ownRefusal(decoder, subject, own);
  const other = leftOut[0]!;
  const otherOrderId = orderOf(other);
  if (jobs.fixedStart[lots.job[other]!]! >= 0)
    return refuse(subject, "crowds-out", {
      text: `Order ${otherOrderId} is held at a start that it could not keep then.`,
      remedy: `Free order ${otherOrderId}, or choose another place.`,
      otherOrderId,
    });
  const reasons = reasonsFor(decoder, lots.job[other]!, null);
  return refuse(subject, "crowds-out", {
    text: inWords(`Order ${otherOrderId} would find no room in the plan any more.`, ...reasons),
    reasons,
    remedy: `Choose another place, or take order ${otherOrderId} out first.`,
    otherOrderId,
  });
}
