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
      tags: ["plants", "orders", "imports", "planning", "events", "exports", "health"].map((name) => ({
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
type JsonObject = { [key: string]: unknown };

/** What the schemas alone can not say: uploads are forms, failures have their own media type, some replies are files. */
function asWritten(document: Document): Document {
  for (const path of Object.values((document.paths ?? {}) as JsonObject)) {
    for (const operation of Object.values(path as JsonObject)) {
      for (const [status, response] of Object.entries((operation as { responses: JsonObject }).responses)) {
        if (/^[45]/.test(status)) nameProblemBody(response as { content?: JsonObject });
      }
    }
  }
  return document;
}

function nameProblemBody(response: { content?: JsonObject }): void {
  const { content } = response;
  if (content?.["application/json"] === undefined) return;
  response.content = { "application/problem+json": content["application/json"] };
}
