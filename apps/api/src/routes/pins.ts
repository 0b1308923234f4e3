import { isoInstant, type ListedPin } from "@formweek/application";
import { FreeQuery, PinListResponse, PinRequest, type PinnedOrder, PinsRevision } from "@formweek/contracts";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { OrderPath, PlantPath, failures } from "./route-schemas.ts";

/** Orders that planners hold in their places. */
export function pinRoutes(server: WireServer, { app, actorOf }: Asked): void {
  server.get(
    "/api/plants/:plantId/pins",
    {
      schema: {
        tags: ["orders"],
        summary: "The orders that are held on a line or at a start",
        params: PlantPath,
        response: { 200: PinListResponse, ...failures },
      },
    },
    async (request) => {
      const { revision, pins } = valueOf(await app.queries.getPins(request.params, actorOf(request)));
      return { revision, pins: pins.map(pinOnTheWire) };
    },
  );

  server.put(
    "/api/plants/:plantId/pins/:orderId",
    {
      schema: {
        tags: ["orders"],
        summary: "Hold an order on a line, at a start, or both, from the next planning run on",
        params: OrderPath,
        body: PinRequest,
        response: { 200: PinsRevision, ...failures },
      },
    },
    async (request) => {
      const { lineId, start, revision: expectedRevision } = request.body;
      const startAt = start === null ? null : Date.parse(start) / 1000;
      const input = { ...request.params, lineId, startAt, expectedRevision };
      return valueOf(await app.commands.pinOrder(input, actorOf(request)));
    },
  );

  server.delete(
    "/api/plants/:plantId/pins/:orderId",
    {
      schema: {
        tags: ["orders"],
        summary: "Free an order: the next planning run may put it anywhere",
        params: OrderPath,
        querystring: FreeQuery,
        response: { 200: PinsRevision, ...failures },
      },
    },
    async (request) => {
      const input = { ...request.params, expectedRevision: request.query.revision };
      return valueOf(await app.commands.freeOrder(input, actorOf(request)));
    },
  );
}

function pinOnTheWire({ orderId, lineId, startAt, pinnedBy, pinnedAt, idle }: ListedPin): PinnedOrder {
  const start = startAt === null ? null : isoInstant(startAt);
  return { orderId, lineId, start, pinnedBy, pinnedAt: isoInstant(pinnedAt), idle };
}
