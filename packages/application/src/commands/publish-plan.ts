import { localTextAt } from "@formweek/capacity-model";
import { appError } from "../errors.ts";
import { planNotFound } from "../not-found.ts";
import { instantOfIso } from "../planning/iso-instant.ts";
import type { PlanDocument } from "../planning/plan-document.ts";
import { type Result, ok, refused } from "../result.ts";
import type { UseCase } from "../use-case.ts";
import { notWorkedOn } from "./step-refusals.ts";
import { type StepInput, type StepTaken, takeStep } from "./take-step.ts";

export interface PublishInput extends StepInput {
  /** The working plan, named so that nobody gives out what they did not look at. */
  readonly planId: string;
  /** What is said to it; may be empty. */
  readonly note: string;
  /** Instant, seconds: runs that start before it are frozen; null: none is. */
  readonly frozenUntil: number | null;
}

/** Gives the working plan out to the plant. A step, but none that undo goes back over: what was given out stays given out. */
export const publishPlan: UseCase<PublishInput, StepTaken> = {
  role: "planner",
  run: (ports, { plantId, planId, note, frozenUntil, ...seen }, actor) =>
    takeStep(ports, { plantId, ...seen }, actor, async (here, { plans }) => {
      if (here.planId !== planId) return refused(notWorkedOn);
      const plan = await plans.get(plantId, planId);
      if (plan === null) return refused(planNotFound(planId));
      const frozen = frozenWithin(plan.document, frozenUntil);
      if (!frozen.ok) return frozen;
      const { undoTo, redoTo, records } = here;
      const step = { kind: "publish", planId, undoTo, redoTo, records } as const;
      return ok({ ...step, note, frozenUntil: frozen.value });
    }),
};

/** The end of what is frozen, if it lies in the plan. */
function frozenWithin({ horizon, plant }: PlanDocument, until: number | null): Result<number | null> {
  const start = instantOfIso(horizon.start) ?? -Infinity;
  const end = instantOfIso(horizon.end) ?? Infinity;
  if (until === null || (until > start && until <= end)) return ok(until);
  const local = (at: number): string => localTextAt(plant.timeZone, at);
  const fault = {
    path: "frozenUntil",
    problem: `${local(until)} lies outside the plan, ${local(start)} to ${local(end)}.`,
    remedy: "Name an instant after the plan's start and no later than its end, or none.",
    cause: { kind: "frozen end outside plan", from: horizon.start, to: horizon.end },
  } as const;
  const text = { cause: fault.problem, remedy: fault.remedy };
  return refused(appError("invalid-input", { title: "The plan cannot be frozen so.", ...text }, [fault]));
}
