import type { WrittenFile } from "@formweek/application";
import { TableQuery } from "@formweek/contracts";
import type { FastifyReply } from "fastify";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { z } from "zod";
import { PlanPath, PlantPath, failures } from "./route-schemas.ts";

const mediaTypes = {
  csv: "text/csv; charset=utf-8",
  xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
} as const;

const file = {
  tags: ["exports"],
  response: { 200: z.string().describe("The file"), ...failures },
};

/** What the routes of tables to take away have in common. */
export const fileSchema = { ...file, produces: ["text/csv", mediaTypes.xlsx] };

/** Files in the formats of the import. */
export function exportRoutes(server: WireServer, { app, actorOf }: Asked): void {
  const schema = { ...file, params: PlantPath };

  server.get(
    "/api/plants/:plantId/orders.csv",
    { schema: { ...schema, summary: "The order book as CSV", produces: ["text/csv"] } },
    async (request, reply) => {
      const asked = { ...request.params, format: "csv" } as const;
      return sendFile(reply, "csv", valueOf(await app.queries.exportOrders(asked, actorOf(request))));
    },
  );

  server.get(
    "/api/plants/:plantId/orders.xlsx",
    { schema: { ...schema, summary: "The order book as a workbook", produces: [mediaTypes.xlsx] } },
    async (request, reply) => {
      const asked = { ...request.params, format: "xlsx" } as const;
      return sendFile(reply, "xlsx", valueOf(await app.queries.exportOrders(asked, actorOf(request))));
    },
  );

  server.get(
    "/api/plants/:plantId/plant.xlsx",
    { schema: { ...schema, summary: "The plant's records as a workbook", produces: [mediaTypes.xlsx] } },
    async (request, reply) =>
      sendFile(reply, "xlsx", valueOf(await app.queries.exportPlant(request.params, actorOf(request)))),
  );
}

/** Tables for people to take away; they are not read back. */
export function tableRoutes(server: WireServer, { app, actorOf }: Asked): void {
  const schema = { ...fileSchema, querystring: TableQuery };

  server.get(
    "/api/plants/:plantId/plans/latest/table",
    { schema: { ...schema, params: PlantPath, summary: "The working plan's runs as a table" } },
    async (request, reply) => {
      const asked = { ...request.params, ...request.query, planId: null };
      return sendFile(reply, asked.format, valueOf(await app.queries.exportPlan(asked, actorOf(request))));
    },
  );

  server.get(
    "/api/plants/:plantId/plans/:planId/table",
    { schema: { ...schema, params: PlanPath, summary: "A plan's runs as a table" } },
    async (request, reply) => {
      const asked = { ...request.params, ...request.query };
      return sendFile(reply, asked.format, valueOf(await app.queries.exportPlan(asked, actorOf(request))));
    },
  );

  server.get(
    "/api/plants/:plantId/orders/table",
    {
      schema: {
        ...schema,
        params: PlantPath,
        summary: "The order book with each order's state in the working plan as a table",
      },
    },
    async (request, reply) => {
      const asked = { ...request.params, ...request.query };
      return sendFile(
        reply,
        asked.format,
        valueOf(await app.queries.exportOrderBook(asked, actorOf(request))),
      );
    },
  );
}

/** Answers with a file to be saved. */
export function sendFile(
  reply: FastifyReply,
  format: keyof typeof mediaTypes,
  { name, bytes }: WrittenFile,
): FastifyReply {
  return reply
    .header("content-type", mediaTypes[format])
    .header("content-disposition", `attachment; filename="${name}"`)
    .header("cache-control", "no-store")
    .send(Buffer.from(bytes));
}
