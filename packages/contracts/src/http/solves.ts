import { z } from "zod";
import { ProblemDetails } from "../problem-details.ts";
import { PlanDocument } from "../plan-document.ts";
import { Id, InstantText } from "../scalars.ts";
import { RunFindings } from "./findings.ts";

/** What may count for more than its price in the plant. */
export const Concern = z.enum(["lateness", "changes", "overtime", "calm"]).meta({ id: "Concern" });
export type Concern = z.infer<typeof Concern>;

/** Budget of a solve. Neither `seconds` nor `steps`: ten seconds. With `steps` alone and one thread the plan is reproducible. */
export const SolveRequest = z
  .object({
    seconds: z.number().min(0.1).max(3600).optional(),
    steps: z.int().min(1).max(1_000_000_000).optional(),
    seed: z.int().min(0).max(4_294_967_295).optional().describe("1 when left out"),
    threads: z.int().min(1).max(64).optional().describe("1 when left out"),
    favour: Concern.optional().describe(
      "Counts for five times its price beside all else; the plan's cost is told at the plant's prices all the same",
    ),
  })
  .meta({ id: "SolveRequest" });
export type SolveRequest = z.infer<typeof SolveRequest>;

export const SolveAccepted = z.object({ runId: Id });
export type SolveAccepted = z.infer<typeof SolveAccepted>;

export const RunState = z.enum(["queued", "running", "done", "stopped", "failed"]);
export type RunState = z.infer<typeof RunState>;

export const SolveProgress = z
  .object({
    share: z.number().describe("Share of the budget used, 0 to 1"),
    steps: z.int(),
    elapsedMs: z.number(),
    bestTotal: z.number().describe("Cost of the best plan so far, in the plant's currency"),
    lateOrders: z.int(),
  })
  .meta({ id: "SolveProgress" });
export type SolveProgress = z.infer<typeof SolveProgress>;

/** What a run is to find out. */
export const RunTask = z
  .discriminatedUnion("kind", [
    z.object({ kind: z.literal("plan"), favour: Concern.nullable() }),
    z.object({ kind: z.literal("remedies"), planId: Id, orderId: Id }),
    z.object({ kind: z.literal("trade-off") }),
    z.object({ kind: z.literal("scenarios"), scenarioIds: z.array(Id) }),
    z.object({ kind: z.literal("help") }),
  ])
  .meta({ id: "RunTask" });
export type RunTask = z.infer<typeof RunTask>;

const provisionalFacts = {
  number: z.int().min(1).describe("Counts up in its run with each better plan"),
  foundAt: InstantText,
};

/** Which is the best plan that a run has found so far. */
export const ProvisionalHead = z.object(provisionalFacts).meta({ id: "ProvisionalHead" });
export type ProvisionalHead = z.infer<typeof ProvisionalHead>;

/** A plan that is nobody's yet; the chains that hold its late orders are not worked out. */
export const ProvisionalPlan = z.object({ ...provisionalFacts, document: PlanDocument });
export type ProvisionalPlan = z.infer<typeof ProvisionalPlan>;

/** The best plan that a run has found so far. */
export const ProvisionalResponse = z.object({
  plan: ProvisionalPlan.nullable().describe("Null where the run has none yet, or has ended"),
});
export type ProvisionalResponse = z.infer<typeof ProvisionalResponse>;

/** How a run is to be stopped. */
export const StopRequest = z
  .object({
    keep: z
      .int()
      .min(1)
      .optional()
      .describe(
        "Number of the provisional plan that is to be kept, one of the newest few; left out: the best at the end",
      ),
  })
  .meta({ id: "StopRequest" });
export type StopRequest = z.infer<typeof StopRequest>;

/** A run as it stands. */
export const SolveRunResponse = z
  .object({
    runId: Id,
    task: RunTask,
    state: RunState,
    progress: SolveProgress.nullable(),
    curve: z
      .array(z.tuple([z.number(), z.number()]))
      .describe("Elapsed milliseconds and best total, ascending"),
    planId: Id.nullable().describe("Of a planning run that has a plan"),
    provisional: ProvisionalHead.nullable().describe(
      "The best plan so far of a planning run that is going on; null where it has none yet or has ended",
    ),
    findings: RunFindings.nullable().describe(
      "Of a run that has ended and was to find something else; of a stopped one what it had found by then",
    ),
    problem: ProblemDetails.pick({ code: true, title: true, cause: true, remedy: true, faults: true })
      .nullable()
      .describe("Why it failed; null otherwise"),
  })
  .meta({ id: "SolveRunResponse" });
export type SolveRunResponse = z.infer<typeof SolveRunResponse>;
