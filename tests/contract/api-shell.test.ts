import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, plantId } from "../fixtures/api-server.ts";
import { formOf, problemOf } from "../fixtures/http-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
});
afterAll(() => api.close());

const solves = `/api/plants/${plantId}/solves`;
const json = { "content-type": "application/json" };

describe("failures have one body (RFC 9457)", () => {
  test("an address that is not there", async () => {
    expect(problemOf(await api.server.inject({ url: "/api/nowhere" })).code).toBe("no-such-route");
    expect(problemOf(await api.server.inject({ url: "/nowhere" })).status).toBe(404);
  });

  test("a method that an address does not have", async () => {
    expect(
      problemOf(await api.server.inject({ method: "DELETE", url: `/api/plants/${plantId}` })).status,
    ).toBe(404);
  });

  test("a body that is no JSON", async () => {
    const answer = await api.server.inject({ method: "POST", url: solves, headers: json, payload: "{" });
    expect(problemOf(answer).code).toBe("malformed-body");
  });

  test("a content type that is not read", async () => {
    const headers = { "content-type": "text/plain" };
    const answer = await api.server.inject({ method: "POST", url: solves, headers, payload: "x" });
    expect(problemOf(answer)).toMatchObject({ code: "unsupported-media-type", status: 415 });
  });

  test("a body above the limit", async () => {
    const payload = JSON.stringify({ filling: "x".repeat(70_000) });
    const answer = await api.server.inject({ method: "POST", url: solves, headers: json, payload });
    expect(problemOf(answer)).toMatchObject({ code: "body-too-large", status: 413 });
  });

  test("more files than a form may have", async () => {
    const files = Array.from({ length: 21 }, (_, index) => ({ name: `${index}.csv`, content: "order\n" }));
    const url = `/api/plants/${plantId}/imports?kind=orders`;
    const answer = await api.server.inject({ method: "POST", url, ...formOf(files) });
    expect(problemOf(answer)).toMatchObject({ code: "body-too-large", status: 413 });
  });

  test("a value out of range, with the field named", async () => {
    const payload = { steps: 0, seed: 1.5 };
    const problem = problemOf(await api.server.inject({ method: "POST", url: solves, payload }));
    expect(problem).toMatchObject({ code: "invalid-request", status: 400, instance: solves });
    expect(problem.faults.map(({ path }) => path)).toEqual(["steps", "seed"]);
    expect(problem.faults.map(({ problem: said }) => said.split(":")[0])).toEqual(["0", "1.5"]);
    expect(problem.faults.every(({ remedy }) => remedy.includes("/api/docs"))).toBe(true);
  });

  test("a value of the wrong shape, or none, with field and value, wherever in the request it stands", async () => {
    const root = `/api/plants/${plantId}`;
    const faultsOf = async (ask: object) => problemOf(await api.server.inject(ask)).faults;
    const pin = {
      method: "PUT",
      url: `${root}/pins/A`,
      payload: { lineId: "L1", start: "soon", revision: 0 },
    };
    expect(await faultsOf(pin)).toMatchObject([
      { path: "start", problem: expect.stringMatching(/^"soon": must be an instant such as/) as string },
    ]);
    expect(await faultsOf({ url: `${root}/orders/table?format=pdf` })).toMatchObject([
      { path: "format", problem: expect.stringMatching(/^"pdf": /) as string },
    ]);
    const change = { before: null, after: { id: 5 } };
    const payload = { changes: [change, "x".repeat(500)] };
    const faults = await faultsOf({ method: "POST", url: `${root}/orders/changes`, payload });
    const at = (path: string): string => faults.find((fault) => fault.path === path)?.problem ?? "";
    expect(at("changes.0.after.id")).toMatch(/^5: /);
    expect(at("changes.0.after.pieces")).toMatch(/^is missing: /);
    expect(at("changes.1")).toMatch(/^"x{59}…: /);
    const none = { method: "POST", url: `${root}/working-plan/undo`, payload: {} };
    expect(await faultsOf(none)).toMatchObject([
      { path: "revision", problem: expect.stringMatching(/^is missing/) as string },
    ]);
  });

  test("a fault of the planner tells nothing of its inside", async () => {
    const other = await openApiServer();
    await other.runtime.close();
    const answer = await other.server.inject({ url: "/api/plants" });
    await other.close();
    expect(problemOf(answer)).toMatchObject({ code: "internal", status: 500 });
    expect(answer.body).not.toMatch(/\.ts:|select|node_modules/);
  });
});

describe("requests of other sites", () => {
  test("a change from a page of another origin is refused, one of our own is not", async () => {
    const payload = { steps: 0 };
    const foreign = { origin: "http://elsewhere.example" };
    const refused = await api.server.inject({ method: "POST", url: solves, headers: foreign, payload });
    expect(problemOf(refused)).toMatchObject({ code: "foreign-origin", status: 403 });
    const own = { host: "localhost:4310", origin: "http://localhost:4310" };
    const taken = await api.server.inject({ method: "POST", url: solves, headers: own, payload });
    expect(problemOf(taken).code).toBe("invalid-request");
  });

  test("a form that a browser marks as cross-site is refused without an origin, too", async () => {
    const headers = { "sec-fetch-site": "cross-site" };
    const answer = await api.server.inject({ method: "POST", url: `${solves}/any/stop`, headers });
    expect(problemOf(answer).code).toBe("foreign-origin");
  });

  test.each(["planner.example", "127.0.0.1.example", "10.0.0.5:4310"])(
    "the name %s is not this machine's",
    async (host) => {
      const answer = await api.server.inject({ url: "/api/plants", headers: { host } });
      expect(problemOf(answer).code).toBe("foreign-origin");
    },
  );

  test.each(["localhost:4310", "127.0.0.1", "[::1]:4310"])("the name %s is", async (host) => {
    expect((await api.server.inject({ url: "/api/plants", headers: { host } })).statusCode).toBe(200);
  });
});

describe("what every answer carries", () => {
  test("a page may load nothing but itself and be framed by nobody", async () => {
    const { headers } = await api.server.inject({ url: "/api/plants" });
    expect(headers["content-security-policy"]).toContain("default-src 'self'");
    expect(headers["content-security-policy"]).toContain("frame-ancestors 'none'");
    expect(headers["x-content-type-options"]).toBe("nosniff");
  });

  test("too many requests are turned away with their own body", async () => {
    const narrow = await openApiServer({ requestsPerMinute: 2 });
    const ask = () => narrow.server.inject({ url: "/api/health/live" });
    expect((await ask()).statusCode).toBe(200);
    expect((await ask()).statusCode).toBe(200);
    const third = await ask();
    await narrow.close();
    expect(problemOf(third)).toMatchObject({ code: "too-many-requests", status: 429 });
    expect(Number(third.headers["retry-after"])).toBeGreaterThan(0);
  });
});

describe("health", () => {
  test("live and ready while the store answers, not ready once it is closed", async () => {
    expect((await api.server.inject({ url: "/api/health/live" })).json()).toEqual({
      status: "ok",
      checks: {},
    });
    expect((await api.server.inject({ url: "/api/health/ready" })).json()).toEqual({
      status: "ok",
      checks: { database: "up" },
    });
    const other = await openApiServer();
    await other.runtime.close();
    const down = await other.server.inject({ url: "/api/health/ready" });
    await other.close();
    expect(down.statusCode).toBe(503);
    expect(down.json()).toMatchObject({ status: "not ready" });
  });
});
