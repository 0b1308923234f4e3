import { localTextAt } from "@formweek/capacity-model";
import { type AppError, appError } from "../errors.ts";
import type { OfferKind } from "../ports/hold-repository.ts";
import type { Offer } from "./promise-answer.ts";

/** Promises stand on a plan, and there is none. */
export const notPlannedYet = appError("not-planned-yet", {
  title: "Nothing can be promised yet.",
  cause: "This plant was never planned: promises stand on the working plan.",
  remedy: "Have a planner start a planning run, then ask again.",
});

/** The working plan ends in the past. */
export function planOver(timeZone: string, end: number): AppError {
  return appError("plan-over", {
    title: "The working plan is over.",
    cause: `It ends at ${shown(timeZone, end)}; what comes after it is not planned.`,
    remedy: "Have a planner start a planning run, then ask again.",
  });
}

/** The plan cannot be timed for the inputs as they are. */
export function planDoesNotFollow(orderId: string): AppError {
  return appError("plan-does-not-follow", {
    title: "The working plan does not hold any more.",
    cause: `Plant or orders have changed so that order ${orderId} cannot run as it was planned.`,
    remedy: "Have a planner start a planning run, then ask again.",
  });
}

/** The offer can be kept, but later than the customer was told. */
export function promiseMoved(
  timeZone: string,
  { kind, finish, promised }: Pick<Offer, "kind" | "finish" | "promised">,
  told: number,
): AppError {
  const now = Date.parse(promised) / 1000;
  return {
    ...appError("promise-moved", {
      title: "This date cannot be promised any more.",
      cause: `${shown(timeZone, told)} was offered; by now it is ${shown(timeZone, now)}: hours were given to others, or time has passed.`,
      remedy: "Tell the customer the new date and hold that, or look at the alternatives. Nothing was held.",
    }),
    offer: { kind, finish, promised },
  };
}

/** There is no offer of the kind any more, or none that may be held. */
export function offerGone(kind: OfferKind, why: string): AppError {
  return appError("offer-gone", {
    title: "This offer is not there any more.",
    cause: why === "" ? `Nothing can be offered as "${kind}" by now.` : why,
    remedy: "Ask again and choose among what is offered now. Nothing was held.",
  });
}

/** Holds that stand have no place in the plan: nobody can say what is free. */
export function holdsNotPlanned(orderIds: readonly string[]): AppError {
  return appError("holds-not-planned", {
    title: "Nothing can be held at present.",
    cause: `Capacity that is held already has no place in the working plan: ${orderIds.join(", ")}.`,
    remedy: "Have a planner start a planning run, or release these holds; then hold it again.",
  });
}

/** A hold that has ended cannot be changed. */
export function holdEnded(orderId: string, state: string): AppError {
  return appError("hold-ended", {
    title: "This hold has ended.",
    cause: `Hold ${orderId} is ${state}; its capacity is not kept any more.`,
    remedy: "Ask again and hold what is offered now.",
  });
}

/** The key belongs to a hold of something else. */
export const holdKeyUsed = appError(
  "hold-key-used",
  {
    title: "This key was used for another hold.",
    cause:
      "A hold was made with the same key before, for other goods, another customer or until another time.",
    remedy: "Choose a new key for each hold that is wanted.",
  },
  [{ path: "key", problem: "belongs to another hold", remedy: "Choose a new key." }],
);

/** Others were faster too often in a row. */
export const holdsBusy = appError("conflicting-write", {
  title: "The hold was not made: too many were made at once.",
  cause: "Others changed the plan each time before this hold could be written.",
  remedy: "Try again. Nothing was held.",
});

/** A clock time in the plant as people read it. */
export function shown(timeZone: string, at: number): string {
  return localTextAt(timeZone, at).slice(0, 16).replace("T", " ");
}
