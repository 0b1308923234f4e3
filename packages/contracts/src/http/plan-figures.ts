import { z } from "zod";

/** What a plan comes to. */
export const PlanFigures = z
  .object({
    cost: z.number().describe("At the plant's prices and in its currency"),
    lateOrders: z.int(),
    unplannedOrders: z.int(),
    lateSeconds: z.int().describe("Of all orders together"),
    changeSeconds: z.int().describe("Lines standing in changes; pauses not counted"),
    overtimeSeconds: z.int(),
  })
  .meta({ id: "PlanFigures" });
export type PlanFigures = z.infer<typeof PlanFigures>;
