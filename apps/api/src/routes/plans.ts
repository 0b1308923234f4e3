import {
  type ComparedPlans,
  isoInstant,
  type PlanHead as StoredHead,
  type StoredPlan,
} from "@formweek/application";
import { PlanComparison, PlanListResponse, PlanProblemResponse, PlanResponse } from "@formweek/contracts";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { ComparePath, PlanPath, PlantPath, failures } from "./route-schemas.ts";

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

  server.get(
    "/api/plants/:plantId/plans/:planId/problem",
    {
      schema: {
        tags: ["planning"],
        summary: "The engine's problem in which a plan is worked on by hand",
        params: PlanPath,
        response: { 200: PlanProblemResponse, ...failures },
      },
    },
    async (request) => {
      const { sameInputs, problem, frozenOrderIds } = valueOf(
        await app.queries.getPlanProblem(request.params, actorOf(request)),
      );
      return { sameInputs, problem: { ...problem }, frozenOrderIds: [...frozenOrderIds] };
    },
  );

  server.get(
    "/api/plants/:plantId/plans/:planId/compare/:otherPlanId",
    {
      schema: {
        tags: ["planning"],
        summary: "What is different in another plan of the plant",
        params: ComparePath,
        response: { 200: PlanComparison, ...failures },
      },
    },
    async (request) =>
      comparisonOnTheWire(valueOf(await app.queries.getComparison(request.params, actorOf(request)))),
  );
}

function headOnTheWire({ id, createdAt, engineVersion, seed, steps, parentId, edit, summary }: StoredHead) {
  const making = { parentPlanId: parentId, edit };
  return { planId: id, createdAt: isoInstant(createdAt), engineVersion, seed, steps, ...making, summary };
}

function planOnTheWire({ id, createdAt, document }: StoredPlan) {
  return { planId: id, createdAt: isoInstant(createdAt), document };
}

function comparisonOnTheWire({ from, to, difference }: ComparedPlans) {
  const sameInputs = from.document.inputHash === to.document.inputHash;
  return { from: sideOnTheWire(from), to: sideOnTheWire(to), sameInputs, ...difference };
}

function sideOnTheWire({ id, createdAt, document: { summary, objective } }: StoredPlan) {
  return { planId: id, createdAt: isoInstant(createdAt), summary, objective };
}
