import { z } from "zod";
import { PlanDocument, PlanSummary } from "../plan-document.ts";
import { Id, InstantText } from "../scalars.ts";

export const PlanHead = z
  .object({
    planId: Id,
    createdAt: InstantText,
    engineVersion: z.string(),
    seed: z.int(),
    steps: z.int(),
    summary: PlanSummary,
  })
  .meta({ id: "PlanHead" });
export type PlanHead = z.infer<typeof PlanHead>;

/** Newest first. */
export const PlanListResponse = z.array(PlanHead);
export type PlanListResponse = z.infer<typeof PlanListResponse>;

export const PlanResponse = z.object({ planId: Id, createdAt: InstantText, document: PlanDocument });
export type PlanResponse = z.infer<typeof PlanResponse>;
