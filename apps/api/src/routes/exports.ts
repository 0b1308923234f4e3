import type { WrittenFile } from "@formweek/application";
import type { FastifyReply } from "fastify";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { z } from "zod";
import { PlantPath, failures } from "./route-schemas.ts";

const CSV = "text/csv; charset=utf-8";
const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** Files in the formats of the import. */
export function exportRoutes(server: WireServer, { app, actorOf }: Asked): void {
  const schema = {
    tags: ["exports"],
    params: PlantPath,
    response: { 200: z.string().describe("The file"), ...failures },
  };

  server.get(
    "/api/plants/:plantId/orders.csv",
    { schema: { ...schema, summary: "The order book as CSV", produces: ["text/csv"] } },
    async (request, reply) => {
      const asked = { ...request.params, format: "csv" } as const;
      return sendFile(reply, CSV, valueOf(await app.queries.exportOrders(asked, actorOf(request))));
    },
  );

  server.get(
    "/api/plants/:plantId/orders.xlsx",
    { schema: { ...schema, summary: "The order book as a workbook", produces: [XLSX] } },
    async (request, reply) => {
      const asked = { ...request.params, format: "xlsx" } as const;
      return sendFile(reply, XLSX, valueOf(await app.queries.exportOrders(asked, actorOf(request))));
    },
  );

  server.get(
    "/api/plants/:plantId/plant.xlsx",
    { schema: { ...schema, summary: "The plant's records as a workbook", produces: [XLSX] } },
    async (request, reply) =>
      sendFile(reply, XLSX, valueOf(await app.queries.exportPlant(request.params, actorOf(request)))),
  );
}

function sendFile(reply: FastifyReply, mediaType: string, { name, bytes }: WrittenFile): FastifyReply {
  return reply
    .header("content-type", mediaType)
    .header("content-disposition", `attachment; filename="${name}"`)
    .header("cache-control", "no-store")
    .send(Buffer.from(bytes));
}
