import { z } from "zod";
import { Id } from "./scalars.ts";

const LotNumber = z.int().min(0).max(1_000_000).describe("0-based lot of the order");

/** One lot of a plan. */
export const LotName = z.object({ orderId: Id, lot: LotNumber }).meta({ id: "LotName" });
export type LotName = z.infer<typeof LotName>;

const NewPlace = {
  lineId: Id.describe("Line on which the lot is to run"),
  before: LotName.nullable().describe("Lot that comes right after it on that line; null: it is the last"),
};

/** One change of a plan by hand. Everything but the lots it names keeps its line and its turn on the line. */
export const PlanEdit = z
  .discriminatedUnion("kind", [
    z
      .object({ kind: z.literal("move"), orderId: Id, lot: LotNumber, ...NewPlace })
      .describe("Another line, or another turn on its line, for one lot"),
    z
      .object({ kind: z.literal("take out"), orderId: Id })
      .describe("The order leaves the plan until it is put back"),
    z
      .object({ kind: z.literal("put back"), orderId: Id })
      .describe("An order that is not planned goes where it costs least"),
    z
      .object({
        kind: z.literal("split"),
        orderId: Id,
        lot: LotNumber,
        pieces: z.int().min(1).describe("Pieces that leave the lot and become a lot of their own"),
        ...NewPlace,
      })
      .describe("A part of a lot becomes a lot of its own"),
    z.object({ kind: z.literal("join"), orderId: Id }).describe("All lots of the order become its first lot"),
  ])
  .meta({ id: "PlanEdit" });
export type PlanEdit = z.infer<typeof PlanEdit>;
