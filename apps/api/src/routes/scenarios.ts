import {
  AdoptRequest,
  HelpRequest,
  Scenario,
  ScenarioDraft,
  ScenarioListResponse,
  ScenarioQuery,
  ScenarioSolveRequest,
  ScenarioWrite,
  SolveAccepted,
  StepResponse,
} from "@formweek/contracts";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { PlantPath, ScenarioPath, failures } from "./route-schemas.ts";
import { changeOf, scenarioOnTheWire } from "./scenarios-on-the-wire.ts";
import { wishOf } from "./wish-of.ts";

/** Room for the most changes, each of the largest shift. */
const MOST_BYTES = 1024 * 1024;

/** What-if scenarios: write them, work them out beside the plan, adopt one. */
export function scenarioRoutes(server: WireServer, { app, actorOf }: Asked): void {
  server.get(
    "/api/plants/:plantId/scenarios",
    {
      schema: {
        tags: ["scenarios"],
        summary: "Scenarios of a plant with what each came to, the oldest first",
        params: PlantPath,
        response: { 200: ScenarioListResponse, ...failures },
      },
    },
    async (request) =>
      valueOf(await app.queries.listScenarios(request.params, actorOf(request))).map(scenarioOnTheWire),
  );

  server.post(
    "/api/plants/:plantId/scenarios",
    {
      bodyLimit: MOST_BYTES,
      schema: {
        tags: ["scenarios"],
        summary: "Write a scenario; nothing of plant, orders or plan is changed by it",
        params: PlantPath,
        body: ScenarioDraft,
        response: { 201: Scenario, ...failures },
      },
    },
    async (request, reply) => {
      const { name, changes } = request.body;
      const draft = { ...request.params, name, changes: changes.map(changeOf) };
      const written = valueOf(await app.commands.writeScenario(draft, actorOf(request)));
      return reply.code(201).send(scenarioOnTheWire(written));
    },
  );

  server.put(
    "/api/plants/:plantId/scenarios/:scenarioId",
    {
      bodyLimit: MOST_BYTES,
      schema: {
        tags: ["scenarios"],
        summary: "Write a scenario anew, over the revision that was seen",
        params: ScenarioPath,
        body: ScenarioWrite,
        response: { 200: Scenario, ...failures },
      },
    },
    async (request) => {
      const { name, changes, revision: expectedRevision } = request.body;
      const draft = { ...request.params, name, changes: changes.map(changeOf), expectedRevision };
      return scenarioOnTheWire(valueOf(await app.commands.rewriteScenario(draft, actorOf(request))));
    },
  );

  server.delete(
    "/api/plants/:plantId/scenarios/:scenarioId",
    {
      schema: {
        tags: ["scenarios"],
        summary: "Delete a scenario; answers what it was",
        params: ScenarioPath,
        querystring: ScenarioQuery,
        response: { 200: Scenario, ...failures },
      },
    },
    async (request) => {
      const named = { ...request.params, expectedRevision: request.query.revision };
      return scenarioOnTheWire(valueOf(await app.commands.deleteScenario(named, actorOf(request))));
    },
  );

  server.post(
    "/api/plants/:plantId/scenarios/solves",
    {
      schema: {
        tags: ["scenarios"],
        summary: "Work scenarios out beside the plan; look at it as at a planning run",
        params: PlantPath,
        body: ScenarioSolveRequest,
        response: { 202: SolveAccepted, ...failures },
      },
    },
    async (request, reply) => {
      const { scenarioIds, ...budget } = request.body;
      const wish = { ...request.params, ...wishOf(budget), scenarioIds };
      return reply.code(202).send(valueOf(await app.commands.requestScenarios(wish, actorOf(request))));
    },
  );

  server.post(
    "/api/plants/:plantId/scenarios/help",
    {
      schema: {
        tags: ["scenarios"],
        summary: "Try which single changes would help most; look at it as at a planning run",
        params: PlantPath,
        body: HelpRequest,
        response: { 202: SolveAccepted, ...failures },
      },
    },
    async (request, reply) => {
      const wish = { ...request.params, ...wishOf(request.body) };
      return reply.code(202).send(valueOf(await app.commands.requestHelp(wish, actorOf(request))));
    },
  );

  server.post(
    "/api/plants/:plantId/scenarios/:scenarioId/adoption",
    {
      schema: {
        tags: ["scenarios"],
        summary: "Make a scenario's changes in plant and book, and work on the plan that was found for them",
        params: ScenarioPath,
        body: AdoptRequest,
        response: { 200: StepResponse, ...failures },
      },
    },
    async (request) => {
      const { revision: expectedRevision, scenarioRevision } = request.body;
      const input = { ...request.params, expectedRevision, scenarioRevision };
      return valueOf(await app.commands.adoptScenario(input, actorOf(request)));
    },
  );
}
