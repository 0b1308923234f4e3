import {
  type Job,
  type ObjectiveBreakdown,
  type PromisedOrder,
  type Work,
  candidateEdits,
} from "@formweek/scheduler";
import { openPromise } from "@formweek/scheduler";
import { assembleOrders } from "../planning/assemble-problem.ts";
import { applyHours } from "../planning/apply-hours.ts";
import { inOtherHours } from "../planning/plant-frame.ts";
import { shiftOfEdit } from "../planning/remedy-shift.ts";
import type { HoursEdit } from "../planning/plan-edit.ts";
import type { Clock } from "../ports/clock.ts";
import { ok, type Result } from "../result.ts";
import type { UseCase } from "../use-case.ts";
import { type AskedJob, asked, askedFrom, earliest } from "./answer-enquiry.ts";
import type { PromiseInput } from "./ask-promise.ts";
import { describeOffer, type OfferTerms } from "./describe-offer.ts";
import type { DeskKeeper } from "./desk-keeper.ts";
import { inSlices, pause } from "./in-slices.ts";
import type { Alternatives, Enquiry, Offer } from "./promise-answer.ts";
import { baseOf, type StandingDesk } from "./standing-desk.ts";

/** Shifts that are tried; each opens a desk of its own. */
const MOST_SHIFTS = 4;

type Alternative = Offer | { readonly kind: Offer["kind"]; readonly reason: string };

/** Other ways to make what is asked for, each with its price: more lines, parts, hours, or others that become later. */
export const askAlternatives = (desks: DeskKeeper): UseCase<PromiseInput, Alternatives> => ({
  role: "sales",
  run: async (ports, { plantId, enquiry }) => {
    const opened = await desks.open(ports, plantId);
    return opened.ok ? findAlternatives(opened.value.standing, enquiry, ports.clock) : opened;
  },
});

/** The same on a desk; between two tries the process may answer others. */
export async function findAlternatives(
  standing: StandingDesk,
  enquiry: Enquiry,
  { now, monotonicMs }: Clock,
): Promise<Result<Alternatives>> {
  const from = askedFrom(standing, now());
  if (!from.ok) return from;
  const ready = asked(standing, enquiry, { from: from.value });
  if (!ready.ok) return ready;
  const base = baseOf(standing, from.value);
  const { job } = ready.value;
  if (job === null) return ok({ base, offers: [], none: [] });
  const asking: Asking = { standing, ready: ready.value, job, whole: wholeOf(standing, ready.value, job) };
  const found: Alternative[] = [];
  for (const way of [overLines, inParts, withShift, inTheWay]) {
    await pause();
    found.push(...(await inSlices(way(asking), monotonicMs)));
  }
  const offers = found.filter((each): each is Offer => "parts" in each);
  const none = found.filter((each): each is Exclude<Alternative, Offer> => !("parts" in each));
  return ok({ base, offers: offers.sort((a, b) => (a.promised < b.promised ? -1 : 1)), none });
}

interface Asking {
  readonly standing: StandingDesk;
  readonly ready: AskedJob;
  readonly job: Job;
  /** Promise in one lot at which nobody becomes later; null: there is none. */
  readonly whole: PromisedOrder | null;
}

function wholeOf({ desk }: StandingDesk, { wish }: AskedJob, job: Job): PromisedOrder | null {
  const answer = earliest(desk, { job, wish });
  return answer.status === "promised" ? answer.promise : null;
}

function offerOf(
  { standing, ready }: Asking,
  promise: PromisedOrder,
  more: Pick<OfferTerms, "kind"> & Partial<Pick<OfferTerms, "price" | "shift">>,
): Offer {
  const { wish, quantity } = ready;
  const { price = promise.price, shift = null, kind } = more;
  return describeOffer(standing, promise, { kind, wish, goodPieces: quantity.toMakePieces, price, shift });
}

/** Without a wanted day lateness must not be priced: it is due when one lot would be finished. */
const dueOf = ({ ready, job, whole }: Asking): Job =>
  ready.wish.wantedAt === null && whole !== null ? { ...job, dueAt: whole.finish } : job;

/** Two lines at once. Only for who takes parts: an order in one piece is made in one lot. */
function* overLines(asking: Asking): Work<readonly Alternative[]> {
  if (!asking.ready.wish.partsAllowed) return [{ kind: "split", reason: "parts-not-allowed" }];
  const split = yield* asking.standing.desk.splitOverLines(dueOf(asking));
  switch (split.status) {
    case "promised":
      return [offerOf(asking, split.promise, { kind: "split" })];
    case "none":
      return [{ kind: "split", reason: split.reason }];
    case "faulty-order":
      return [];
  }
}

/** What can be ready by the wanted day, and the rest after it. */
function* inParts(asking: Asking): Work<readonly Alternative[]> {
  const { ready, standing, job } = asking;
  const { wantedAt, partsAllowed } = ready.wish;
  if (wantedAt === null) return [{ kind: "first part", reason: "no-day-wanted" }];
  if (!partsAllowed) return [{ kind: "first part", reason: "parts-not-allowed" }];
  const part = yield* standing.desk.firstPart(job, wantedAt);
  switch (part.status) {
    case "whole":
      return [{ kind: "first part", reason: "whole-in-time" }];
    case "promised":
      return [offerOf(asking, part.promise, { kind: "first part" })];
    case "none":
      return [{ kind: "first part", reason: part.reason }];
    case "faulty-order":
      return [];
  }
}

/** One shift more, the best of those that would shorten what holds the run. */
function* withShift(asking: Asking): Work<readonly Alternative[]> {
  const { standing, ready, whole } = asking;
  if (whole === null) return [{ kind: "extra shift", reason: "no-run-to-shorten" }];
  const problem = { ...standing.desk.problem, jobs: [...standing.desk.problem.jobs, whole.order] };
  yield;
  const edits = candidateEdits(problem, whole.plan(), whole.order.orderId).filter(
    (edit) => !("from" in edit) || edit.from >= ready.from,
  );
  const shifts = edits.flatMap((edit) => shiftOfEdit(standing.assembled, edit) ?? []).slice(0, MOST_SHIFTS);
  if (shifts.length === 0) return [{ kind: "extra shift", reason: "no-closed-hours" }];
  let best: Offer | null = null;
  for (const hours of shifts) {
    yield;
    const offer = offerWithShift(asking, hours);
    if (
      offer !== null &&
      Date.parse(offer.finish) / 1000 < whole.finish &&
      (best === null || offer.finish < best.finish)
    )
      best = offer;
  }
  return best === null ? [{ kind: "extra shift", reason: "no-gain" }] : [best];
}

/** The offer in the hours with a shift more, nobody later than on the desk; null where there is none. */
function offerWithShift(asking: Asking, hours: HoursEdit): Offer | null {
  if (hours.kind !== "add shift") return null;
  const { standing } = asking;
  const { desk, assembled, records } = standing;
  const frame = inOtherHours(standing.frame, applyHours(standing.frame.plant, hours));
  const problem = { ...assembleOrders(frame, records).problem, pins: assembled.problem.pins };
  const limits = new Map(
    problem.jobs.flatMap(({ orderId }) => {
      const limit = desk.limitOf(orderId);
      return limit === null ? [] : [[orderId, limit.by] as const];
    }),
  );
  const changed = openPromise(problem, desk.plan(), limits, { retime: true });
  if (changed.status !== "open") return null;
  const answer = changed.promise(dueOf(asking));
  if (answer.status !== "promised") return null;
  const price = differenceOf(answer.promise.objective, desk.objective);
  return offerOf(asking, answer.promise, {
    kind: "extra shift",
    price,
    shift: { added: hours.shift, frame },
  });
}

/** What one plan costs above another, term by term. */
function differenceOf(after: ObjectiveBreakdown, before: ObjectiveBreakdown): ObjectiveBreakdown {
  const terms = after.terms.map((term) => {
    const was = before.terms.find(({ name }) => name === term.name);
    return { ...term, amount: term.amount - (was?.amount ?? 0), cost: term.cost - (was?.cost ?? 0) };
  });
  return { terms, total: after.total - before.total };
}

/** Forecasts and orders that count for less may become later. */
function* inTheWay(asking: Asking): Work<readonly Alternative[]> {
  const { standing, job, whole } = asking;
  const made = new Set(standing.desk.problem.jobs.map(({ orderId }) => orderId));
  const lesser = standing.orders.filter(
    ({ id, kind, weight }) =>
      made.has(id) && !standing.heldOrderIds.has(id) && (kind === "forecast" || weight < job.weight),
  );
  if (lesser.length === 0) return [{ kind: "displacing", reason: "nobody-counts-less" }];
  yield;
  const answer = standing.desk.displacing(dueOf(asking), new Set(lesser.map(({ id }) => id)));
  if (answer.status !== "promised") return [{ kind: "displacing", reason: "no-place" }];
  if (whole !== null && answer.promise.finish >= whole.finish)
    return [{ kind: "displacing", reason: "no-gain" }];
  return [offerOf(asking, answer.promise, { kind: "displacing" })];
}
