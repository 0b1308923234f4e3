import { isoInstant, type ProvisionalHead, type ProvisionalPlan, type SeenRun } from "@formweek/application";
import {
  ProvisionalResponse,
  RemediesRequest,
  SolveAccepted,
  SolveRequest,
  SolveRunResponse,
  StopRequest,
  TradeOffRequest,
} from "@formweek/contracts";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { findingsOnTheWire } from "./findings-on-the-wire.ts";
import { PlantPath, RunPath, failures } from "./route-schemas.ts";
import { wishOf } from "./wish-of.ts";

/** Runs: plan, look for remedies, compare plans; look at one, stop it. */
export function solveRoutes(server: WireServer, { app, actorOf }: Asked): void {
  server.post(
    "/api/plants/:plantId/solves",
    {
      schema: {
        tags: ["planning"],
        summary: "Start a planning run over the order book as it stands; one at a time in a plant",
        params: PlantPath,
        body: SolveRequest,
        response: { 202: SolveAccepted, ...failures },
      },
    },
    async (request, reply) => {
      const { favour = null, ...budget } = request.body;
      const wish = { ...request.params, ...wishOf(budget), favour };
      const accepted = valueOf(await app.commands.requestSolve(wish, actorOf(request)));
      return reply.code(202).send(accepted);
    },
  );

  server.post(
    "/api/plants/:plantId/remedies",
    {
      schema: {
        tags: ["planning"],
        summary: "Look for what would help a late order of the working plan; look at it as at a planning run",
        params: PlantPath,
        body: RemediesRequest,
        response: { 202: SolveAccepted, ...failures },
      },
    },
    async (request, reply) => {
      const { revision: expectedRevision, orderId, ...budget } = request.body;
      const wish = { ...request.params, ...wishOf(budget), orderId, expectedRevision };
      return reply.code(202).send(valueOf(await app.commands.requestRemedies(wish, actorOf(request))));
    },
  );

  server.post(
    "/api/plants/:plantId/trade-offs",
    {
      schema: {
        tags: ["planning"],
        summary: "Make several plans no one of which beats another; look at it as at a planning run",
        params: PlantPath,
        body: TradeOffRequest,
        response: { 202: SolveAccepted, ...failures },
      },
    },
    async (request, reply) => {
      const wish = { ...request.params, ...wishOf(request.body) };
      return reply.code(202).send(valueOf(await app.commands.requestTradeOff(wish, actorOf(request))));
    },
  );

  server.get(
    "/api/plants/:plantId/solves/:runId",
    {
      schema: {
        tags: ["planning"],
        summary: "A planning run as it stands",
        params: RunPath,
        response: { 200: SolveRunResponse, ...failures },
      },
    },
    async (request) => runOnTheWire(valueOf(await app.queries.getRun(request.params, actorOf(request)))),
  );

  server.get(
    "/api/plants/:plantId/solves/:runId/plan",
    {
      schema: {
        tags: ["planning"],
        summary: "The best plan that a planning run has found so far, while it goes on",
        params: RunPath,
        response: { 200: ProvisionalResponse, ...failures },
      },
    },
    async (request) => {
      const plan = valueOf(await app.queries.getProvisional(request.params, actorOf(request)));
      return { plan: plan === null ? null : provisionalOnTheWire(plan) };
    },
  );

  server.post(
    "/api/plants/:plantId/solves/:runId/stop",
    {
      schema: {
        tags: ["planning"],
        summary: "Stop a planning run; its best plan so far is kept, or just the one that is named",
        params: RunPath,
        body: StopRequest.nullish(),
        response: { 202: SolveAccepted, ...failures },
      },
    },
    async (request, reply) => {
      const keep = request.body?.keep ?? null;
      valueOf(await app.commands.stopSolve({ ...request.params, keep }, actorOf(request)));
      return reply.code(202).send({ runId: request.params.runId });
    },
  );
}

function runOnTheWire(run: SeenRun) {
  const { id: runId, task, state, progress, curve, planId, provisional, findings, problem } = run;
  const found = findings === null ? null : findingsOnTheWire(findings);
  const head = provisional === null ? null : withInstant(provisional);
  return { runId, task, state, progress, curve, planId, provisional: head, findings: found, problem };
}

const provisionalOnTheWire = ({ document, ...head }: ProvisionalPlan) => ({ ...withInstant(head), document });

const withInstant = ({ number, foundAt }: ProvisionalHead) => ({ number, foundAt: isoInstant(foundAt) });
