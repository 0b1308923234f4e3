import { z } from "zod";
import { ProblemDetails } from "../problem-details.ts";
import { Id } from "../scalars.ts";

/** Budget of a solve. Neither `seconds` nor `steps`: ten seconds. With `steps` alone and one thread the plan is reproducible. */
export const SolveRequest = z
  .object({
    seconds: z.number().min(0.1).max(3600).optional(),
    steps: z.int().min(1).max(1_000_000_000).optional(),
    seed: z.int().min(0).max(4_294_967_295).optional().describe("1 when left out"),
    threads: z.int().min(1).max(64).optional().describe("1 when left out"),
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

/** A solve as it stands. */
export const SolveRunResponse = z
  .object({
    runId: Id,
    state: RunState,
    progress: SolveProgress.nullable(),
    curve: z
      .array(z.tuple([z.number(), z.number()]))
      .describe("Elapsed milliseconds and best total, ascending"),
    planId: Id.nullable(),
    problem: ProblemDetails.pick({ code: true, title: true, cause: true, remedy: true, faults: true })
      .nullable()
      .describe("Why it failed; null otherwise"),
  })
  .meta({ id: "SolveRunResponse" });
export type SolveRunResponse = z.infer<typeof SolveRunResponse>;
