import { Plant } from "@formweek/capacity-model";
import { PlantListResponse, PlantResponse } from "@formweek/contracts";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { PlantPath, failures } from "./route-schemas.ts";

/** Plants and their records. */
export function plantRoutes(server: WireServer, { app, actorOf }: Asked): void {
  server.get(
    "/api/plants",
    {
      schema: {
        tags: ["plants"],
        summary: "Plants you have a role in",
        response: { 200: PlantListResponse, ...failures },
      },
    },
    async (request) => [...valueOf(await app.queries.listPlants(actorOf(request)))],
  );

  server.get(
    "/api/plants/:plantId",
    {
      schema: {
        tags: ["plants"],
        summary: "All records of a plant: lines, moulds, sheets, products, crews, calendars, rules",
        params: PlantPath,
        response: { 200: PlantResponse.extend({ plant: Plant }), ...failures },
      },
    },
    async (request) => valueOf(await app.queries.getPlant(request.params, actorOf(request))),
  );
}
