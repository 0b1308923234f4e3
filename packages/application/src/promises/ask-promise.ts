import { type Result, ok } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { answerEnquiry, askedFrom } from "./answer-enquiry.ts";
import type { DeskKeeper } from "./desk-keeper.ts";
import type { Enquiry, PromiseGiven } from "./promise-answer.ts";
import { baseOf, type StandingDesk } from "./standing-desk.ts";

export interface PromiseInput extends PlantInput {
  readonly enquiry: Enquiry;
}

/** When a customer's goods would be ready if no other order became later than promised. Nothing is booked. */
export const askPromise = (desks: DeskKeeper): UseCase<PromiseInput, PromiseGiven> => ({
  role: "sales",
  run: async (ports, { plantId, enquiry }) => {
    const opened = await desks.open(ports, plantId);
    return opened.ok ? promiseGiven(opened.value.standing, enquiry, ports.clock.now()) : opened;
  },
});

/** The answer with what it stands on. Pure. */
export function promiseGiven(standing: StandingDesk, enquiry: Enquiry, now: number): Result<PromiseGiven> {
  const from = askedFrom(standing, now);
  if (!from.ok) return from;
  const answered = answerEnquiry(standing, enquiry, now);
  if (!answered.ok) return answered;
  const { currency } = standing.frame.plant;
  return ok({ base: baseOf(standing, from.value), currency, ...answered.value });
}
