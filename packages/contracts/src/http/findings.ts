import { z } from "zod";
import { HoursEdit, PlanEdit } from "../plan-edit.ts";
import { Id, InstantText, Revision } from "../scalars.ts";
import { PlanFigures } from "./plan-figures.ts";
import { HelpFindings, ScenarioFindings } from "./scenarios.ts";

const budget = {
  seconds: z.number().min(0.1).max(3600).optional().describe("Of the whole search"),
  steps: z.int().min(1).max(1_000_000_000).optional(),
  seed: z.int().min(0).max(4_294_967_295).optional().describe("1 when left out"),
};

/** Asks what would help a late order of the working plan. */
export const RemediesRequest = z
  .object({
    revision: Revision.describe("Revision of the working plan in which the order is late"),
    orderId: Id,
    ...budget,
  })
  .meta({ id: "RemediesRequest" });
export type RemediesRequest = z.infer<typeof RemediesRequest>;

/** Asks for several plans no one of which beats another. */
export const TradeOffRequest = z
  .object({ ...budget, threads: z.int().min(1).max(64).optional().describe("1 when left out") })
  .meta({ id: "TradeOffRequest" });
export type TradeOffRequest = z.infer<typeof TradeOffRequest>;

/** Works on a plan that a run found. */
export const ChooseRequest = z
  .object({
    revision: Revision.describe("Revision of the working plan that this was decided on"),
    runId: Id,
    place: z.int().min(0).max(1000).describe("Place in the list of what the run found, from 0"),
  })
  .meta({ id: "ChooseRequest" });
export type ChooseRequest = z.infer<typeof ChooseRequest>;

const spell = { from: InstantText, to: InstantText };

/** A change of plant or order, which people make. */
export const RemedyChange = z
  .discriminatedUnion("kind", [
    z.object({ kind: z.literal("extra shift"), lineId: Id, ...spell }),
    z.object({ kind: z.literal("extra team"), ...spell }),
    z.object({ kind: z.literal("extra operators"), poolId: Id, heads: z.number(), ...spell }),
    z.object({ kind: z.literal("mould copy"), mouldId: Id }),
    z.object({ kind: z.literal("another line"), orderId: Id, lineId: Id }),
    z.object({ kind: z.literal("lots"), orderId: Id, most: z.int(), leastPieces: z.int() }),
    z.object({ kind: z.literal("earlier start"), orderId: Id, at: InstantText }),
    z
      .object({ kind: z.literal("later due"), orderId: Id, at: InstantText })
      .describe("The due date that the order meets with the plan as it is"),
    z.object({ kind: z.literal("earlier sheet"), sheetId: Id, seconds: z.int() }),
  ])
  .meta({ id: "RemedyChange" });
export type RemedyChange = z.infer<typeof RemedyChange>;

export const RemedyAction = z
  .discriminatedUnion("kind", [
    z.object({ kind: z.literal("edit"), edit: PlanEdit }).describe("A change of the plan by hand"),
    z.object({ kind: z.literal("plan on") }).describe("Searching on from the plan; choose it by its place"),
    z
      .object({ kind: z.literal("hours"), edit: HoursEdit })
      .describe("The plant's hours are changed and the plan with them; choose it by its place"),
    z
      .object({ kind: z.literal("change"), change: RemedyChange })
      .describe("People change plant or order first"),
  ])
  .meta({ id: "RemedyAction" });
export type RemedyAction = z.infer<typeof RemedyAction>;

const lateBy = z.int().nullable().describe("Seconds by which the order is late; null: not planned");

export const Remedy = z
  .object({ action: RemedyAction, after: PlanFigures, orderLateSeconds: lateBy })
  .meta({ id: "Remedy" });
export type Remedy = z.infer<typeof Remedy>;

export const RemedyFindings = z
  .object({
    kind: z.literal("remedies"),
    planId: Id,
    orderId: Id,
    before: PlanFigures,
    orderLateSeconds: lateBy,
    tried: z.int().describe("How many things were tried"),
    remedies: z
      .array(Remedy)
      .describe(
        "What the plan alone can give first, then what changes plant or order; of each the cheapest plan first",
      ),
  })
  .meta({ id: "RemedyFindings" });
export type RemedyFindings = z.infer<typeof RemedyFindings>;

export const Criterion = z.enum([
  "lateness",
  "changes",
  "labour",
  "earliness",
  "load balance",
  "stability",
  "last end",
]);
export type Criterion = z.infer<typeof Criterion>;

export const TradedPlan = z
  .object({
    figures: PlanFigures,
    values: z.array(z.number()).describe("Money by criterion, in the order of `criteria`"),
    leastIn: z.array(Criterion).describe("Criteria in which none of the plans is better"),
  })
  .meta({ id: "TradedPlan" });
export type TradedPlan = z.infer<typeof TradedPlan>;

export const TradeOffFindings = z
  .object({
    kind: z.literal("trade-off"),
    criteria: z.array(Criterion),
    plans: z.array(TradedPlan).describe("The cheapest first"),
  })
  .meta({ id: "TradeOffFindings" });
export type TradeOffFindings = z.infer<typeof TradeOffFindings>;

export const RunFindings = z
  .discriminatedUnion("kind", [RemedyFindings, TradeOffFindings, ScenarioFindings, HelpFindings])
  .meta({ id: "RunFindings" });
export type RunFindings = z.infer<typeof RunFindings>;
