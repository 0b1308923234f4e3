import { z } from "zod";
import { OrderState, PlanLot, PlanObjective, PlanSummary } from "../plan-document.ts";
import { Id, InstantText } from "../scalars.ts";

const PlanSide = z.object({
  planId: Id,
  createdAt: InstantText,
  summary: PlanSummary,
  objective: PlanObjective,
});

/** What is different between two plans of a plant. */
export const PlanComparison = z
  .object({
    from: PlanSide,
    to: PlanSide,
    sameInputs: z.boolean().describe("Both were made from the same plant, orders and held orders"),
    movedLots: z
      .array(
        z.object({
          orderId: Id,
          lot: z.int().min(0),
          from: PlanLot.nullable().describe("null: the first plan does not have the lot"),
          to: PlanLot.nullable().describe("null: the second plan does not have the lot"),
        }),
      )
      .describe(
        "Lots on another line, at another time, with other pieces or another set-up; by order, then lot",
      ),
    changedFinishes: z
      .array(
        z.object({
          orderId: Id,
          from: InstantText.nullable().describe("null: not finished in the first plan"),
          to: InstantText.nullable().describe("null: not finished in the second plan"),
        }),
      )
      .describe("By order"),
    changedStates: z
      .array(
        z.object({
          orderId: Id,
          from: OrderState.nullable().describe("null: the first plan does not know the order"),
          to: OrderState.nullable().describe("null: the second plan does not know the order"),
        }),
      )
      .describe("By order"),
  })
  .meta({ id: "PlanComparison" });
export type PlanComparison = z.infer<typeof PlanComparison>;
