import { ROLES, type Role, localPlanner } from "@formweek/application";
import { PlantListResponse } from "@formweek/contracts";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { API_ROUTES, type ApiRoute } from "../fixtures/api-routes.ts";
import { type ApiServer, ROLE_HEADER, fill, openApiServer, plantId } from "../fixtures/api-server.ts";
import { formOf, problemOf } from "../fixtures/http-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
});
afterAll(() => api.close());

const guarded = API_ROUTES.filter((route) => route.role !== null);
const rank = (role: Role): number => ROLES.indexOf(role);
const isStream = (route: ApiRoute): boolean => route.pattern.endsWith("/events");

function ask(route: ApiRoute, role: string) {
  const form =
    route.upload === true ? formOf([{ name: "orders.csv", content: "order,product,pieces,due\n" }]) : null;
  return api.server.inject({
    method: route.method,
    url: route.url(plantId),
    headers: { ...form?.headers, [ROLE_HEADER]: role },
    ...(form === null ? {} : { payload: form.payload }),
    ...(route.payload === undefined ? {} : { payload: route.payload }),
  });
}

describe("who may do what", () => {
  const cases = guarded.flatMap((route) =>
    ROLES.map((role) => [`${role}: ${route.method} ${route.pattern}`, { route, role }] as const),
  );
  const isEnough = (route: ApiRoute, role: Role): boolean => rank(role) >= rank(route.role ?? "viewer");
  const lower = cases.filter(([, { route, role }]) => !isEnough(route, role));
  const enough = cases.filter(([, { route, role }]) => isEnough(route, role) && !isStream(route));

  test.each(lower)("%s is refused", async (_name, { route, role }) => {
    const problem = problemOf(await ask(route, role));
    expect(problem).toMatchObject({ code: "forbidden", status: 403 });
    expect(problem.cause).toContain(route.role);
  });

  test.each(enough)("%s is let through", async (_name, { route, role }) => {
    const answer = await ask(route, role);
    expect(answer.statusCode).not.toBe(403);
    expect(answer.statusCode).toBeLessThan(500);
  });

  test.each(guarded)("without a role in the plant, $method $pattern finds no such plant", async (route) => {
    expect(problemOf(await ask(route, "none"))).toMatchObject({ code: "not-found", status: 404 });
  });

  test("plant data take a manager, orders a planner", async () => {
    const form = formOf([{ name: "plant.csv", content: "id,name\n" }]);
    const url = `/api/plants/${plantId}/imports?kind=plant`;
    const headers = { ...form.headers, [ROLE_HEADER]: "planner" };
    const problem = problemOf(
      await api.server.inject({ method: "POST", url, headers, payload: form.payload }),
    );
    expect(problem).toMatchObject({ code: "forbidden", status: 403 });
  });

  test("the list of plants holds those with a role, and is empty without any", async () => {
    const listFor = async (role: string) => {
      const answer = await api.server.inject({ url: "/api/plants", headers: { [ROLE_HEADER]: role } });
      return PlantListResponse.parse(answer.json()).map(({ id }) => id);
    };
    expect(await listFor("viewer")).toEqual([plantId]);
    expect(await listFor("none")).toEqual([]);
  });

  test("a role in one plant is none in another", async () => {
    const answer = await api.server.inject({
      url: "/api/plants/elsewhere/orders",
      headers: { [ROLE_HEADER]: "administrator" },
    });
    expect(problemOf(answer).code).toBe("not-found");
    expect((await api.app.queries.getPlant({ plantId: "elsewhere" }, localPlanner)).ok).toBe(false);
  });
});
