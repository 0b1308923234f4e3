import {
  HoldChanged,
  HoldListResponse,
  HoldRequest,
  OrderHoldRequest,
  OrderHoldResponse,
} from "@formweek/contracts";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { HoldPath, PlantPath, failures } from "./route-schemas.ts";

/** Capacity that is held for customers. */
export function holdRoutes(server: WireServer, { app, actorOf }: Asked): void {
  server.get(
    "/api/plants/:plantId/holds",
    {
      schema: {
        tags: ["promises"],
        summary: "Capacity that is held for customers, and what became of the last holds",
        params: PlantPath,
        response: { 200: HoldListResponse, ...failures },
      },
    },
    async (request) => valueOf(await app.queries.getHolds(request.params, actorOf(request))),
  );

  server.post(
    "/api/plants/:plantId/holds",
    {
      schema: {
        tags: ["promises"],
        summary:
          "Take the capacity of an offer for a customer until an instant; the same key again answers the same",
        params: PlantPath,
        body: HoldRequest,
        response: { 200: HoldChanged, ...failures },
      },
    },
    async (request) => {
      const { offer, until, ...rest } = request.body;
      const promised = Date.parse(offer.promised) / 1000;
      const terms = { kind: offer.kind, promised, until: Date.parse(until) / 1000 };
      const input = { ...request.params, ...rest, ...terms };
      return valueOf(await app.commands.holdCapacity(input, actorOf(request)));
    },
  );

  server.post(
    "/api/plants/:plantId/holds/:holdId/release",
    {
      schema: {
        tags: ["promises"],
        summary: "Give held capacity back",
        params: HoldPath,
        response: { 200: HoldChanged, ...failures },
      },
    },
    async (request) => valueOf(await app.commands.releaseHold(request.params, actorOf(request))),
  );

  server.post(
    "/api/plants/:plantId/holds/:holdId/order",
    {
      schema: {
        tags: ["promises"],
        summary: "Make a hold an order of the book; its run stays where it is",
        params: HoldPath,
        body: OrderHoldRequest,
        response: { 200: OrderHoldResponse, ...failures },
      },
    },
    async (request) => {
      const { revision: expectedRevision, ...rest } = request.body;
      const input = { ...request.params, ...rest, expectedRevision };
      return valueOf(await app.commands.orderHold(input, actorOf(request)));
    },
  );
}
