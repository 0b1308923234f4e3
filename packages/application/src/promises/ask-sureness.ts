import { type LineFailures, type Spreads, USUAL_FAILURES, USUAL_VARIATIONS } from "@formweek/scheduler";
import type { FormingLine, Plant } from "@formweek/capacity-model";
import { appError } from "../errors.ts";
import { problemFaulty } from "../jobs/solve-refusals.ts";
import { isoInstant } from "../planning/iso-instant.ts";
import type { OfferKind } from "../ports/hold-repository.ts";
import { type Result, ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { asked, askedFrom, earliest, wholeOffer } from "./answer-enquiry.ts";
import type { DeskKeeper } from "./desk-keeper.ts";
import { inSlices } from "./in-slices.ts";
import type { Enquiry } from "./promise-answer.ts";
import { offerGone } from "./promise-refusals.ts";
import { ENQUIRY_ID } from "./understand.ts";

export interface SurenessInput extends PlantInput {
  readonly enquiry: Enquiry;
  readonly kind: OfferKind;
  /** Instant, seconds; null: when it is wanted, else promised. */
  readonly by: number | null;
  readonly seed: number;
  readonly runs: number;
}

/** How sure an offer is. Instants are ISO 8601 UTC. */
export interface Sureness {
  readonly by: string;
  /** Share of the plays in which it is finished by then. */
  readonly chance: number;
  /** By when it is finished in 80 and 95 % of the plays; null: not within the horizon. */
  readonly at80: string | null;
  readonly at95: string | null;
  readonly runs: number;
  readonly seed: number;
}

/**
 * Plays the plan with the offer in it many times, with lines that fail and runs and changes that take longer or shorter. Same records,
 * seed and number of plays: same answer. The process answers others in between.
 */
export const askSureness = (desks: DeskKeeper): UseCase<SurenessInput, Sureness> => ({
  role: "sales",
  run: async (ports, input) => {
    const opened = await desks.open(ports, input.plantId);
    if (!opened.ok) return opened;
    const { standing } = opened.value;
    const from = askedFrom(standing, ports.clock.now());
    if (!from.ok) return from;
    const ready = asked(standing, input.enquiry, { from: from.value });
    if (!ready.ok) return ready;
    const { job, wish } = ready.value;
    const { seed, runs } = input;
    if (job === null) {
      const at = isoInstant(from.value);
      return ok({
        by: isoInstant(input.by ?? wish.wantedAt ?? from.value),
        chance: 1,
        at80: at,
        at95: at,
        runs,
        seed,
      });
    }
    const held = await heldDesk(input.kind, async () => {
      if (input.kind === "split") {
        const split = await inSlices(standing.desk.splitOverLines(job), ports.clock.monotonicMs);
        return split.status === "promised" ? split.promise : null;
      }
      const answer = earliest(standing.desk, { job, wish });
      return answer.status === "promised" ? answer.promise : null;
    });
    if (!held.ok) return held;
    const promise = held.value;
    const offer = wholeOffer(standing, ready.value, promise);
    const by = input.by ?? wish.wantedAt ?? Date.parse(offer.promised) / 1000;
    const isComputed = offer.parts.some(({ rate }) => rate.basis.kind === "computed");
    const spreads = spreadsOf(standing.frame.plant, isComputed ? standing.margins.spread.spread : 0);
    const played = await inSlices(
      promise.hold(by).simulate({ runs, seed, spreads }),
      ports.clock.monotonicMs,
    );
    if (played.status === "faulty-simulation") return refused(problemFaulty(played.faults));
    const order = played.orders.find(({ orderId }) => orderId === ENQUIRY_ID);
    const chance = played.chanceBy(ENQUIRY_ID, by);
    if (order === undefined || chance === null) throw new Error("the enquiry was played and is not there");
    const instant = (at: number | null): string | null => (at === null ? null : isoInstant(at));
    return ok({
      by: isoInstant(by),
      chance,
      at80: instant(order.finish80),
      at95: instant(order.finish95),
      runs,
      seed,
    });
  },
});

async function heldDesk<T>(kind: OfferKind, find: () => Promise<T | null>): Promise<Result<T>> {
  if (kind !== "whole" && kind !== "split") return refused(notPlayed(kind));
  const promise = await find();
  return promise === null ? refused(offerGone(kind, "")) : ok(promise);
}

const notPlayed = (kind: OfferKind) =>
  appError(
    "invalid-input",
    {
      title: "This kind of offer is not played.",
      cause: `"${kind}" changes hours or other orders first.`,
      remedy: "Ask for a whole order, or for one that is split over lines.",
    },
    [{ path: "kind", problem: `"${kind}" is not played.`, remedy: 'Name "whole" or "split".' }],
  );

const HOUR_SECONDS = 3600;

/**
 * What may come otherwise in a plant: its lines fail as recorded, else as usual. Rates that are reached on the whole have their
 * failures in them. Runs vary as usual; at a computed rate by as much as the model is known to miss.
 */
export function spreadsOf(plant: Plant, modelSpread: number): Spreads {
  return {
    failures: new Map(plant.lines.map((line) => [line.id, failuresOf(line)])),
    failuresInRates: true,
    runVariation: Math.max(USUAL_VARIATIONS.runVariation, modelSpread),
    changeVariation: USUAL_VARIATIONS.changeVariation,
  };
}

function failuresOf({
  meanTimeBetweenFailuresHours: between,
  meanTimeToRepairHours: repair,
}: FormingLine): LineFailures {
  if (between === null || repair === null) return USUAL_FAILURES;
  return {
    meanBetweenSeconds: Math.max(60, between * HOUR_SECONDS),
    meanRepairSeconds: repair * HOUR_SECONDS,
  };
}
