import { Validator } from "@seriousme/openapi-schema-validator";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, openApiServer } from "../fixtures/api-server.ts";
import { API_ROUTES } from "../fixtures/api-routes.ts";

interface Described {
  readonly openapi: string;
  readonly paths: Readonly<Record<string, Readonly<Record<string, DescribedOperation>>>>;
}
interface DescribedOperation {
  readonly summary?: string;
  readonly requestBody?: { readonly content: Readonly<Record<string, unknown>> };
  readonly responses: Readonly<Record<string, { readonly content?: Readonly<Record<string, unknown>> }>>;
}

let api: ApiServer;
let document: Described;

beforeAll(async () => {
  api = await openApiServer();
  document = (await api.server.inject({ url: "/api/openapi.json" })).json<Described>();
});
afterAll(() => api.close());

describe("the interface's description", () => {
  test("is a valid document by the OpenAPI Initiative's own schema for 3.1", async () => {
    const validator = new Validator();
    const verdict = await validator.validate(structuredClone(document) as unknown as Record<string, unknown>);
    expect(verdict.errors).toBeUndefined();
    expect(verdict.valid).toBe(true);
    expect(validator.version).toBe("3.1");
  });

  test("covers every route, and nothing else", () => {
    const described = Object.entries(document.paths).flatMap(([path, operations]) =>
      Object.keys(operations).map((method) => `${method.toUpperCase()} ${path}`),
    );
    const served = API_ROUTES.map(({ method, pattern }) => `${method} ${pattern}`);
    expect(described.sort(compareText)).toEqual(served.sort(compareText));
  });

  test("names every operation and the body of its failures", () => {
    for (const [path, operations] of Object.entries(document.paths)) {
      for (const [method, operation] of Object.entries(operations)) {
        expect(operation.summary, `${method} ${path}`).toMatch(/^[A-Z]/);
        if (path.startsWith("/api/health/")) continue;
        const failure = operation.responses["4XX"];
        expect(Object.keys(failure?.content ?? {}), `${method} ${path}`).toEqual([
          "application/problem+json",
        ]);
      }
    }
  });

  test("says that imports are forms and exports are files", () => {
    const plantPath = "/api/plants/{plantId}";
    const body = document.paths[`${plantPath}/imports`]?.["post"]?.requestBody;
    expect(Object.keys(body?.content ?? {})).toEqual(["multipart/form-data"]);
    const csv = document.paths[`${plantPath}/orders.csv`]?.["get"]?.responses["200"];
    expect(Object.keys(csv?.content ?? {})).toEqual(["text/csv"]);
    for (const path of ["plans/latest/table", "plans/{planId}/table", "orders/table"]) {
      const table = document.paths[`${plantPath}/${path}`]?.["get"]?.responses["200"];
      expect(Object.keys(table?.content ?? {}), path).toEqual([
        "text/csv",
        "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
      ]);
    }
    const stream = document.paths[`${plantPath}/events`]?.["get"]?.responses["200"];
    expect(Object.keys(stream?.content ?? {})).toEqual(["text/event-stream"]);
  });

  test("is shown as a page", async () => {
    const page = await api.server.inject({ url: "/api/docs/" });
    expect(page.statusCode).toBe(200);
    expect(page.headers["content-type"]).toContain("text/html");
  });
});

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
