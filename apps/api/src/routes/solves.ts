import type { SolveRun } from "@formweek/application";
import { SolveAccepted, SolveRequest, SolveRunResponse } from "@formweek/contracts";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { PlantPath, RunPath, failures } from "./route-schemas.ts";

/** Planning runs: start, look, stop. */
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
      const { seconds = null, steps = null, seed = null, threads = null } = request.body;
      const wish = { ...request.params, seconds, steps, seed, threads };
      const accepted = valueOf(await app.commands.requestSolve(wish, actorOf(request)));
      return reply.code(202).send(accepted);
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

  server.post(
    "/api/plants/:plantId/solves/:runId/stop",
    {
      schema: {
        tags: ["planning"],
        summary: "Stop a planning run; its best plan so far is kept",
        params: RunPath,
        response: { 202: SolveAccepted, ...failures },
      },
    },
    async (request, reply) => {
      valueOf(await app.commands.stopSolve(request.params, actorOf(request)));
      return reply.code(202).send({ runId: request.params.runId });
    },
  );
}

function runOnTheWire(run: SolveRun) {
  const { id: runId, state, progress, curve, planId, problem } = run;
  return { runId, state, progress, curve, planId, problem };
}
