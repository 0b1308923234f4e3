import { z } from "zod";
import { Instant, OrderId, ProductId, displayName, pieces, share } from "./scalars.ts";

/** A customer order or a forecast for one product. */
export const Order = z.object({
  /** The order number; unique in an order book. */
  id: OrderId,
  customer: displayName,
  productId: ProductId,
  pieces: pieces.min(1),
  /** Latest instant at which the goods must be ready for dispatch. */
  dueAt: Instant,
  /** Nothing for it runs before this instant; null: as soon as wanted. */
  earliestStartAt: Instant.nullable(),
  weight: z.number().min(0).max(1000),
  kind: z.enum(["firm", "forecast"]),
  underTolerance: share,
  overTolerance: share,
  partsAllowed: z.boolean(),
});
export type Order = z.infer<typeof Order>;
