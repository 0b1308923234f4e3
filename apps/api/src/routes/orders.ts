import { isoInstant, type BookedOrder as Booked } from "@formweek/application";
import { type BookedOrder, OrderBookResponse } from "@formweek/contracts";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { PlantPath, failures } from "./route-schemas.ts";

/** The order book. */
export function orderRoutes(server: WireServer, { app, actorOf }: Asked): void {
  server.get(
    "/api/plants/:plantId/orders",
    {
      schema: {
        tags: ["orders"],
        summary: "The order book with each order's state in the newest plan",
        params: PlantPath,
        response: { 200: OrderBookResponse, ...failures },
      },
    },
    async (request) => {
      const { revision, orders } = valueOf(await app.queries.getOrderBook(request.params, actorOf(request)));
      return { revision, orders: orders.map(orderOnTheWire) };
    },
  );
}

function orderOnTheWire(order: Booked): BookedOrder {
  const { dueAt, earliestStartAt, reasons, ...rest } = order;
  return {
    ...rest,
    dueAt: isoInstant(dueAt),
    earliestStartAt: earliestStartAt === null ? null : isoInstant(earliestStartAt),
    reasons: [...reasons],
  };
}
