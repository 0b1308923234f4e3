import type { Order, Plant } from "@formweek/capacity-model";
import { type Job, type OpenDesk, openEdits, openPromise } from "@formweek/scheduler";
import { refusalOfOrders, refusalOfPlant } from "../commands/record-faults.ts";
import { ProductFinder } from "../import/product-finder.ts";
import { problemFaulty } from "../jobs/solve-refusals.ts";
import { assembleOrders } from "../planning/assemble-problem.ts";
import type { Assembled } from "../planning/assembled.ts";
import { frozenPinsIn, pinsUntil, withPins } from "../planning/frozen-pins.ts";
import type { FrozenPlan } from "../planning/frozen-plan.ts";
import { instantOfIso, isoInstant } from "../planning/iso-instant.ts";
import type { PlanDocument } from "../planning/plan-document.ts";
import { planOfDocument } from "../planning/plan-of-document.ts";
import type { PlannedRecords } from "../planning/planning-snapshot.ts";
import { framePlant, type PlantFrame } from "../planning/plant-frame.ts";
import { type Result, ok, refused } from "../result.ts";
import type { PromiseBase } from "./promise-answer.ts";
import { planDoesNotFollow } from "./promise-refusals.ts";
import { offersFrom } from "./offers-from.ts";
import { RateMargins } from "./rate-margins.ts";

/** A plan that promises stand on, with the records that it is timed under. */
export interface DeskRecords {
  readonly planId: string;
  /** Of the working plan. */
  readonly revision: number;
  readonly document: PlanDocument;
  readonly frame: PlantFrame;
  readonly margins: RateMargins;
  readonly finder: ProductFinder;
  readonly records: PlannedRecords;
  /** Null: nothing is frozen. */
  readonly frozen: FrozenPlan | null;
}

/** The working plan made ready for enquiries, under the inputs as they are. */
export interface StandingDesk extends DeskRecords {
  /** What is frozen, and what is under way, is pinned in its problem. */
  readonly assembled: Assembled;
  readonly desk: OpenDesk;
  readonly heldOrderIds: ReadonlySet<string>;
  readonly orders: readonly Order[];
  readonly unplannedOrders: number;
  readonly unplannedHolds: readonly string[];
  /** Instant at which the next run begins: offers from then on would move it. */
  readonly nextStart: number;
}

/** What stays the same for a plant as long as its own records do. */
export interface DeskFrame {
  readonly frame: PlantFrame;
  readonly margins: RateMargins;
  readonly finder: ProductFinder;
}

/** A plant's records made ready for all of its products over the horizon of a plan, or what is wrong with them. */
export function frameFor(plant: Plant, { horizon }: Pick<PlanDocument, "horizon">): Result<DeskFrame> {
  const refusal = refusalOfPlant(plant);
  if (refusal !== null) return refused(refusal);
  const start = instantOfIso(horizon.start);
  if (start === null) throw new Error(`a stored plan begins at "${horizon.start}"`);
  const frame = framePlant(plant, start, plant.products);
  return ok({ frame, margins: new RateMargins(plant), finder: new ProductFinder(plant) });
}

/**
 * Opens the desk: the plan is timed again for the inputs as they are now, as a change by hand would; runs that are frozen, or begin
 * before offers do, stay where they are. Pure, apart from the clock's instant.
 */
export function openDesk(from: DeskRecords, now: number): Result<StandingDesk> {
  const { frame, records, document, frozen } = from;
  const refusal = refusalOfOrders(records.orders, frame.plant);
  if (refusal !== null) return refused(refusal);
  const made = assembleOrders(frame, records);
  const given = planOfDocument(document, made.problem);
  const frozenPins = frozen === null ? [] : frozenPinsIn(made.problem, frozen, document);
  const held = withPins(made.problem, frozenPins);
  const begin = offersFrom(frame, now);
  const problem = withPins(held, pinsUntil(held, given, begin));
  const opened = openEdits(problem, given);
  if (!opened.ok) return refused(problemFaulty(opened.error));
  const { plan } = opened.value;
  const desk = openPromise(problem, plan);
  if (desk.status === "faulty-problem") return refused(problemFaulty(desk.faults));
  if (desk.status === "plan-does-not-follow") return refused(planDoesNotFollow(desk.orderId));
  const planned = new Set(plan.lots.map(({ orderId }) => orderId));
  const without = problem.jobs.filter(({ orderId }) => !planned.has(orderId)).map(({ orderId }) => orderId);
  const later = plan.lots.map(({ start }) => start).filter((start) => start >= begin);
  return ok({
    ...from,
    assembled: { ...made, problem },
    desk,
    heldOrderIds: records.heldOrderIds,
    orders: records.orders,
    unplannedOrders: without.filter((id) => !records.heldOrderIds.has(id)).length,
    unplannedHolds: without.filter((id) => records.heldOrderIds.has(id)),
    nextStart: Math.min(Infinity, ...later),
  });
}

/** What an answer of the desk says about itself. */
export function baseOf(standing: StandingDesk, from: number): PromiseBase {
  const { planId, revision, document, assembled, frame, unplannedOrders, unplannedHolds } = standing;
  return {
    planId,
    revision,
    sameInputs: document.inputHash === assembled.inputHash,
    from: isoInstant(from),
    until: isoInstant(frame.window.end),
    unplannedOrders,
    unplannedHolds,
  };
}

/** The order as the engine is asked for it: neither it nor its change begins before the instant. */
export function startingFrom(job: Job, from: number): Job {
  const earliestStartAt = Math.max(job.earliestStartAt, from);
  return {
    ...job,
    earliestStartAt,
    options: job.options.map((option) => ({ ...option, availableFromAt: from })),
  };
}

/** A desk without a store: on a plan just made of a plant and its orders. */
export function deskOnPlan(
  {
    plant,
    orders,
    document,
  }: { readonly plant: Plant; readonly orders: readonly Order[]; readonly document: PlanDocument },
  now: number,
): Result<StandingDesk> {
  const framed = frameFor(plant, document);
  if (!framed.ok) return framed;
  const records = { orders, bookRevision: 0, heldOrderIds: new Set<string>(), stockShares: [], pins: [] };
  return openDesk({ planId: "plan", revision: 0, document, records, frozen: null, ...framed.value }, now);
}
