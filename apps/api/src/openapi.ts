import swagger from "@fastify/swagger";
import swaggerUi from "@fastify/swagger-ui";
import { jsonSchemaTransform, jsonSchemaTransformObject } from "fastify-type-provider-zod";
import { z } from "zod";
import type { WireServer } from "./wire-type-provider.ts";

/** Serves the interface's description (OpenAPI 3.1) and a page to read it. */
export async function describeInterface(server: WireServer): Promise<void> {
  await server.register(swagger, {
    openapi: {
      openapi: "3.1.0",
      info: {
        title: "Formweek",
        version: "1",
        description:
          "Capacity and order planning for forming lines. Instants are ISO 8601 in UTC with whole seconds; failures are problem details (RFC 9457) with code, cause, remedy and faults.",
      },
      tags: [
        "plants",
        "orders",
        "imports",
        "planning",
        "scenarios",
        "promises",
        "events",
        "exports",
        "health",
      ].map((name) => ({
        name,
      })),
    },
    transform: jsonSchemaTransform,
    transformObject: (input) => asWritten(jsonSchemaTransformObject(input)),
  });
  await server.register(swaggerUi, { routePrefix: "/api/docs", staticCSP: true });
  server.get("/api/openapi.json", { schema: { hide: true, response: { 200: z.looseObject({}) } } }, () => ({
    ...server.swagger(),
  }));
}

type Document = ReturnType<typeof jsonSchemaTransformObject>;
interface Response {
  content?: Record<string, unknown>;
}
interface Operation {
  responses: Record<string, Response>;
  requestBody?: unknown;
}

/** What the schemas alone can not say: failures have a media type of their own, and uploads are forms. */
function asWritten(document: Document): Document {
  const paths = Object.entries((document.paths ?? {}) as Record<string, Record<string, Operation>>);
  for (const [path, operations] of paths) {
    for (const operation of Object.values(operations)) {
      nameProblemBodies(operation);
      if (path.endsWith("/imports") || path.endsWith("/promises/file")) operation.requestBody = uploadForm;
    }
  }
  return document;
}

function nameProblemBodies({ responses }: Operation): void {
  for (const [status, response] of Object.entries(responses)) {
    const [body] = Object.values(response.content ?? {});
    if (/^[45]XX$/i.test(status) && body !== undefined)
      response.content = { "application/problem+json": body };
  }
}

const uploadForm = {
  required: true,
  description: "One workbook, or one or more CSV files",
  content: {
    "multipart/form-data": {
      schema: {
        type: "object",
        properties: { file: { type: "array", items: { type: "string", format: "binary" } } },
        required: ["file"],
      },
    },
  },
};
