import { RatesQuery, RatesResponse } from "@formweek/contracts";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { PlantPath, failures } from "./route-schemas.ts";

/** Fit and rate of lines, moulds and products. */
export function rateRoutes(server: WireServer, { app, actorOf }: Asked): void {
  server.get(
    "/api/plants/:plantId/rates",
    {
      schema: {
        tags: ["plants"],
        summary: "Fit and rate of every line with every mould and each product that the mould makes",
        params: PlantPath,
        querystring: RatesQuery,
        response: { 200: RatesResponse, ...failures },
      },
    },
    async (request) => {
      const { lineId = null, mouldId = null } = request.query;
      return [
        ...valueOf(await app.queries.getRates({ ...request.params, lineId, mouldId }, actorOf(request))),
      ];
    },
  );
}
