import {
  LoadFindingsResponse,
  LoadOrdersQuery,
  LoadOrdersResponse,
  LoadQuery,
  LoadResponse,
  LoadTableQuery,
} from "@formweek/contracts";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { fileSchema, sendFile } from "./exports.ts";
import { loadFindingsOnTheWire, loadOnTheWire, loadOrdersOnTheWire } from "./load-on-the-wire.ts";
import { PlantPath, failures } from "./route-schemas.ts";

/** Load against capacity. */
export function loadRoutes(server: WireServer, { app, actorOf }: Asked): void {
  const schema = { tags: ["load"], params: PlantPath };

  server.get(
    "/api/plants/:plantId/load",
    {
      schema: {
        ...schema,
        summary: "Load against capacity of all lines, moulds, setter teams or operator pools",
        querystring: LoadQuery,
        response: { 200: LoadResponse, ...failures },
      },
    },
    async (request) => {
      const { from = null, ...asked } = request.query;
      const input = { ...request.params, ...asked, from };
      return loadOnTheWire(valueOf(await app.queries.getLoad(input, actorOf(request))));
    },
  );

  server.get(
    "/api/plants/:plantId/load/orders",
    {
      schema: {
        ...schema,
        summary: "Orders that load one resource in a stretch of time",
        querystring: LoadOrdersQuery,
        response: { 200: LoadOrdersResponse, ...failures },
      },
    },
    async (request) => {
      const input = { ...request.params, ...request.query };
      return loadOrdersOnTheWire(valueOf(await app.queries.getLoadOrders(input, actorOf(request))));
    },
  );

  server.get(
    "/api/plants/:plantId/load/findings",
    {
      schema: {
        ...schema,
        summary: "The bottleneck, what is loaded beyond its limit, and sheets that run out",
        response: { 200: LoadFindingsResponse, ...failures },
      },
    },
    async (request) =>
      loadFindingsOnTheWire(valueOf(await app.queries.getLoadFindings(request.params, actorOf(request)))),
  );

  server.get(
    "/api/plants/:plantId/load/table",
    {
      schema: {
        ...fileSchema,
        summary: "Load against capacity as a table",
        params: PlantPath,
        querystring: LoadTableQuery,
      },
    },
    async (request, reply) => {
      const { from = null, ...asked } = request.query;
      const input = { ...request.params, ...asked, from };
      return sendFile(reply, asked.format, valueOf(await app.queries.exportLoad(input, actorOf(request))));
    },
  );
}
