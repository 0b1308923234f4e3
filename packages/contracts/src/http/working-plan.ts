import { z } from "zod";
import { HandEdit, HoursEdit, PlanEdit } from "../plan-edit.ts";
import { ExistingInstant, Id, InstantText, Revision } from "../scalars.ts";

const SeenRevision = Revision.describe("Revision of the working plan that this was decided on");

/** One step of the working plan: what made the plan at its end the one that is worked on. */
export const WorkingPlanStep = z
  .object({
    revision: Revision.describe("Revision of the working plan after the step"),
    kind: z
      .enum(["run", "edit", "undo", "redo", "restore", "publish", "hold"])
      .describe(
        "A planning run's plan came in; a change by hand; one taken back, or done again; an earlier plan fetched back; given out to the plant; capacity held for a customer, given back or ordered: undo goes back no further",
      ),
    fromPlanId: Id.nullable().describe("Plan before the step; null at the first"),
    planId: Id.describe("Plan after the step"),
    edit: HandEdit.nullable().describe(
      "The change by hand that was made, taken back or done again; null where it was none",
    ),
    note: z.string().nullable().describe("What was said to a plan that was given out; null otherwise"),
    by: z.string(),
    at: InstantText,
  })
  .meta({ id: "WorkingPlanStep" });
export type WorkingPlanStep = z.infer<typeof WorkingPlanStep>;

/** The plan that is worked on in a plant, and how it came about. */
export const WorkingPlanResponse = z
  .object({
    revision: Revision.describe(
      "Counts up by one with every step, 0 before the first; send it back with a change",
    ),
    planId: Id.nullable().describe("null: the plant was never planned"),
    canUndo: z.boolean(),
    canRedo: z.boolean(),
    publishedPlanId: Id.nullable().describe("Plan that was given out last; null: none was"),
    steps: z.array(WorkingPlanStep).describe("Newest first, the last 50"),
  })
  .meta({ id: "WorkingPlanResponse" });
export type WorkingPlanResponse = z.infer<typeof WorkingPlanResponse>;

export const StepsQuery = z.object({
  before: z.coerce.number().int().min(1).describe("Only steps before this revision of the working plan"),
});

/** Newest first, at most 50. */
export const StepListResponse = z.array(WorkingPlanStep);
export type StepListResponse = z.infer<typeof StepListResponse>;

/** The step that is asked for stands on what was seen: nobody's work is taken back unseen. */
export const StepRequest = z.object({ revision: SeenRevision }).meta({ id: "StepRequest" });
export type StepRequest = z.infer<typeof StepRequest>;

export const RestoreRequest = z
  .object({ revision: SeenRevision, planId: Id.describe("The plan that is to be worked on again") })
  .meta({ id: "RestoreRequest" });
export type RestoreRequest = z.infer<typeof RestoreRequest>;

/** Where the working plan stands after a step. */
export const StepResponse = z.object({ revision: Revision, planId: Id }).meta({ id: "StepResponse" });
export type StepResponse = z.infer<typeof StepResponse>;

export const PublishRequest = z
  .object({
    revision: SeenRevision,
    planId: Id.describe("The working plan, as it was looked at"),
    note: z
      .string()
      .trim()
      .max(500)
      .refine((text) => !text.includes("\0"), "must be readable text")
      .describe("What is said to the plan; may be empty"),
    frozenUntil: ExistingInstant.nullable()
      .default(null)
      .describe("Runs that start before it stay where they are; null: none has to"),
  })
  .meta({ id: "PublishRequest" });
export type PublishRequest = z.infer<typeof PublishRequest>;

/** A plan that was given out to the plant. */
export const Publication = z
  .object({
    revision: Revision.describe("Revision of the working plan after it was given out"),
    planId: Id,
    note: z.string(),
    frozenUntil: InstantText.nullable().describe(
      "Runs that start before it stay where they are; null: none has to",
    ),
    by: z.string(),
    at: InstantText,
  })
  .meta({ id: "Publication" });
export type Publication = z.infer<typeof Publication>;

/** Newest first. */
export const PublicationListResponse = z.array(Publication);
export type PublicationListResponse = z.infer<typeof PublicationListResponse>;

export const EditRequest = z
  .object({
    revision: SeenRevision,
    edit: PlanEdit,
    overFrozen: z
      .boolean()
      .default(false)
      .describe("Frozen runs may move; without it a change that would move one is refused"),
  })
  .meta({ id: "EditRequest" });
export type EditRequest = z.infer<typeof EditRequest>;

export const HoursRequest = z
  .object({ revision: SeenRevision, edit: HoursEdit })
  .meta({ id: "HoursRequest" });
export type HoursRequest = z.infer<typeof HoursRequest>;
