import { ProblemDetails } from "@formweek/contracts";
import { Id } from "@formweek/contracts";
import { z } from "zod";

/** Path of everything about one plant. */
export const PlantPath = z.object({ plantId: Id });
export const RunPath = z.object({ plantId: Id, runId: Id });
export const OrderPath = z.object({ plantId: Id, orderId: Id });
export const PlanPath = z.object({ plantId: Id, planId: Id });
export const ComparePath = z.object({ plantId: Id, planId: Id, otherPlanId: Id });
export const HoldPath = z.object({ plantId: Id, holdId: Id });
export const ScenarioPath = z.object({ plantId: Id, scenarioId: Id });
export const ImportPath = z.object({ plantId: Id, importId: Id });

/** Failures of any route, for the description; the error handler writes them. */
export const failures = {
  "4xx": ProblemDetails.describe("The request was refused; the body says why and what to do"),
  "5xx": ProblemDetails.describe("A fault of the planner"),
} as const;
