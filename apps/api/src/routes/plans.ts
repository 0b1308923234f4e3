import { isoInstant, type PlanHead as StoredHead, type StoredPlan } from "@formweek/application";
import { PlanListResponse, PlanResponse } from "@formweek/contracts";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { PlanPath, PlantPath, failures } from "./route-schemas.ts";

/** Plans, newest first. */
export function planRoutes(server: WireServer, { app, actorOf }: Asked): void {
  server.get(
    "/api/plants/:plantId/plans",
    {
      schema: {
        tags: ["planning"],
        summary: "Plans of a plant, newest first",
        params: PlantPath,
        response: { 200: PlanListResponse, ...failures },
      },
    },
    async (request) =>
      valueOf(await app.queries.listPlans(request.params, actorOf(request))).map(headOnTheWire),
  );

  server.get(
    "/api/plants/:plantId/plans/latest",
    {
      schema: {
        tags: ["planning"],
        summary: "The plan that is worked on",
        params: PlantPath,
        response: { 200: PlanResponse, ...failures },
      },
    },
    async (request) =>
      planOnTheWire(
        valueOf(await app.queries.getPlan({ ...request.params, planId: null }, actorOf(request))),
      ),
  );

  server.get(
    "/api/plants/:plantId/plans/:planId",
    {
      schema: {
        tags: ["planning"],
        summary: "One plan",
        params: PlanPath,
        response: { 200: PlanResponse, ...failures },
      },
    },
    async (request) => planOnTheWire(valueOf(await app.queries.getPlan(request.params, actorOf(request)))),
  );
}

function headOnTheWire({ id, createdAt, engineVersion, seed, steps, summary }: StoredHead) {
  return { planId: id, createdAt: isoInstant(createdAt), engineVersion, seed, steps, summary };
}

function planOnTheWire({ id, createdAt, document }: StoredPlan) {
  return { planId: id, createdAt: isoInstant(createdAt), document };
}
