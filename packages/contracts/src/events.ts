import { z } from "zod";
import { HoldState } from "./http/holds.ts";
import { SolveProgress } from "./http/solves.ts";
import { Id, InstantText, Revision } from "./scalars.ts";

/** Data of the server-sent event `solve-progress`; carries no id because it is not stored. */
export const SolveProgressMessage = z.object({
  type: z.literal("solve-progress"),
  at: InstantText,
  runId: Id,
  state: z.enum(["queued", "running"]),
  progress: SolveProgress.nullable(),
});

/** Data of the server-sent event `better-plan`: a run has found a better plan than it had. Carries no id because it is not stored. */
export const BetterPlanMessage = z.object({
  type: z.literal("better-plan"),
  at: InstantText,
  runId: Id,
  number: z.int().min(1).describe("Of the provisional plan"),
});

/** Data of `solve-ended`: the run is done, stopped or failed. */
export const SolveEndedMessage = z.object({
  type: z.literal("solve-ended"),
  at: InstantText,
  runId: Id,
  state: z.enum(["done", "stopped", "failed"]),
  planId: Id.nullable(),
});

/** Data of `plan-saved`. */
export const PlanSavedMessage = z.object({
  type: z.literal("plan-saved"),
  at: InstantText,
  planId: Id,
  runId: Id,
});

/** Data of `orders-changed`. */
export const OrdersChangedMessage = z.object({
  type: z.literal("orders-changed"),
  at: InstantText,
  revision: Revision,
});

/** Data of `pins-changed`: an order was held or freed. */
export const PinsChangedMessage = z.object({
  type: z.literal("pins-changed"),
  at: InstantText,
  revision: Revision,
});

/** Data of `holds-changed`: capacity was held for a customer, given back, ran out or became an order. */
export const HoldsChangedMessage = z.object({
  type: z.literal("holds-changed"),
  at: InstantText,
  revision: Revision,
  holdId: Id,
  state: HoldState,
});

/** Data of `scenarios-changed`: the list of scenarios, or what one of them came to, is another. */
export const ScenariosChangedMessage = z.object({ type: z.literal("scenarios-changed"), at: InstantText });

/** Data of `plant-changed`. */
export const PlantChangedMessage = z.object({
  type: z.literal("plant-changed"),
  at: InstantText,
  revision: Revision,
});

/** Data of `working-plan-changed`: another plan is worked on now, or the plan was given out. */
export const WorkingPlanChangedMessage = z.object({
  type: z.literal("working-plan-changed"),
  at: InstantText,
  revision: Revision,
  planId: Id,
});

/** What a plant's event stream sends; the event's name is `type`, its id the plant's sequence where it has one. */
export const PlantMessage = z
  .discriminatedUnion("type", [
    SolveProgressMessage,
    BetterPlanMessage,
    SolveEndedMessage,
    PlanSavedMessage,
    OrdersChangedMessage,
    PinsChangedMessage,
    HoldsChangedMessage,
    ScenariosChangedMessage,
    PlantChangedMessage,
    WorkingPlanChangedMessage,
  ])
  .meta({ id: "PlantMessage" });
export type PlantMessage = z.infer<typeof PlantMessage>;
