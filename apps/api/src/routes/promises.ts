import {
  AlternativesResponse,
  PromiseEnquiry,
  PromiseResponse,
  SurenessRequest,
  SurenessResponse,
} from "@formweek/contracts";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { PlantPath, failures } from "./route-schemas.ts";

/** When goods would be ready: the first answer, and other ways to make them. Nothing is booked. */
export function promiseRoutes(server: WireServer, { app, actorOf }: Asked): void {
  server.post(
    "/api/plants/:plantId/promises",
    {
      schema: {
        tags: ["promises"],
        summary:
          "The earliest finish of what a customer asks for at which no other order is later than promised",
        params: PlantPath,
        body: PromiseEnquiry,
        response: { 200: PromiseResponse, ...failures },
      },
    },
    async (request) => {
      const input = { ...request.params, enquiry: request.body };
      return valueOf(await app.queries.askPromise(input, actorOf(request)));
    },
  );

  server.post(
    "/api/plants/:plantId/promises/alternatives",
    {
      schema: {
        tags: ["promises"],
        summary: "Other ways to make it, each with its price: more lines, parts, a shift more, others later",
        params: PlantPath,
        body: PromiseEnquiry,
        response: { 200: AlternativesResponse, ...failures },
      },
    },
    async (request) => {
      const input = { ...request.params, enquiry: request.body };
      return valueOf(await app.queries.askAlternatives(input, actorOf(request)));
    },
  );

  server.post(
    "/api/plants/:plantId/promises/sureness",
    {
      schema: {
        tags: ["promises"],
        summary:
          "How sure an offer is, by playing the plan with it many times; the same seed answers the same",
        params: PlantPath,
        body: SurenessRequest,
        response: { 200: SurenessResponse, ...failures },
      },
    },
    async (request) => {
      const { by, ...rest } = request.body;
      const input = { ...request.params, ...rest, by: by === null ? null : Date.parse(by) / 1000 };
      return valueOf(await app.queries.askSureness(input, actorOf(request)));
    },
  );
}
