import { z } from "zod";
import { PlanDocument, PlanSummary } from "../plan-document.ts";
import { HandEdit } from "../plan-edit.ts";
import { Id, InstantText } from "../scalars.ts";

export const PlanHead = z
  .object({
    planId: Id,
    createdAt: InstantText,
    engineVersion: z.string(),
    seed: z.int(),
    steps: z.int(),
    parentPlanId: Id.nullable().describe(
      "Plan that it was made from by hand; null for a planning run's plan",
    ),
    edit: HandEdit.nullable().describe("The change by hand that made it; null for a planning run's plan"),
    summary: PlanSummary,
  })
  .meta({ id: "PlanHead" });
export type PlanHead = z.infer<typeof PlanHead>;

/** Newest first. */
export const PlanListResponse = z.array(PlanHead);
export type PlanListResponse = z.infer<typeof PlanListResponse>;

export const PlanResponse = z.object({ planId: Id, createdAt: InstantText, document: PlanDocument });
export type PlanResponse = z.infer<typeof PlanResponse>;

/** The problem in which a plan is worked on by hand, for an engine in the browser. */
export const PlanProblemResponse = z.object({
  sameInputs: z.boolean().describe("Plant, orders and held orders are what they were when the plan was made"),
  problem: z
    .record(z.string(), z.unknown())
    .describe("The engine's own record of the problem, of the engine version that is served"),
  frozenOrderIds: z
    .array(Id)
    .describe("Orders whose runs were given out and are frozen, as far as the plan still has them so"),
});
export type PlanProblemResponse = z.infer<typeof PlanProblemResponse>;
