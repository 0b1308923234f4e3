import { isoInstant, type ListedStep, type PlanStep } from "@formweek/application";
import {
  ChooseRequest,
  EditRequest,
  HoursRequest,
  PublicationListResponse,
  PublishRequest,
  RestoreRequest,
  StepListResponse,
  StepRequest,
  StepResponse,
  StepsQuery,
  WorkingPlanResponse,
} from "@formweek/contracts";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { PlantPath, failures } from "./route-schemas.ts";

const step = { tags: ["planning"], params: PlantPath, response: { 200: StepResponse, ...failures } };

/** The plan that is worked on: where it stands, changes by hand, back, forward, back to an earlier plan, and out to the plant. */
export function workingPlanRoutes(server: WireServer, { app, actorOf }: Asked): void {
  server.get(
    "/api/plants/:plantId/working-plan",
    {
      schema: {
        tags: ["planning"],
        summary: "Which plan is worked on, and how it came about",
        params: PlantPath,
        response: { 200: WorkingPlanResponse, ...failures },
      },
    },
    async (request) => {
      const { steps, ...here } = valueOf(await app.queries.getWorkingPlan(request.params, actorOf(request)));
      return { ...here, steps: steps.map(stepOnTheWire) };
    },
  );

  server.get(
    "/api/plants/:plantId/working-plan/steps",
    {
      schema: {
        tags: ["planning"],
        summary: "Earlier steps of the working plan, newest first",
        params: PlantPath,
        querystring: StepsQuery,
        response: { 200: StepListResponse, ...failures },
      },
    },
    async (request) => {
      const input = { ...request.params, ...request.query };
      return valueOf(await app.queries.listSteps(input, actorOf(request))).map(stepOnTheWire);
    },
  );

  server.post(
    "/api/plants/:plantId/working-plan/edits",
    { schema: { ...step, summary: "Change the working plan by hand", body: EditRequest } },
    async (request) => {
      const { revision: expectedRevision, edit, overFrozen } = request.body;
      const input = { ...request.params, expectedRevision, edit, overFrozen };
      return valueOf(await app.commands.editPlan(input, actorOf(request)));
    },
  );

  server.post(
    "/api/plants/:plantId/working-plan/hours",
    {
      schema: {
        ...step,
        summary:
          "Close a line for a spell, add a shift on a day, or take either back; the plan is timed again",
        body: HoursRequest,
      },
    },
    async (request) => {
      const { revision: expectedRevision, edit } = request.body;
      const input = { ...request.params, expectedRevision, edit };
      return valueOf(await app.commands.changeHours(input, actorOf(request)));
    },
  );

  server.post(
    "/api/plants/:plantId/working-plan/undo",
    { schema: { ...step, summary: "Take the last step back", body: StepRequest } },
    async (request) => {
      const input = { ...request.params, expectedRevision: request.body.revision };
      return valueOf(await app.commands.undoStep(input, actorOf(request)));
    },
  );

  server.post(
    "/api/plants/:plantId/working-plan/redo",
    { schema: { ...step, summary: "Do the step again that was taken back last", body: StepRequest } },
    async (request) => {
      const input = { ...request.params, expectedRevision: request.body.revision };
      return valueOf(await app.commands.redoStep(input, actorOf(request)));
    },
  );

  server.post(
    "/api/plants/:plantId/working-plan/restore",
    { schema: { ...step, summary: "Work on an earlier plan again", body: RestoreRequest } },
    async (request) => {
      const { revision: expectedRevision, planId } = request.body;
      const input = { ...request.params, expectedRevision, planId };
      return valueOf(await app.commands.restorePlan(input, actorOf(request)));
    },
  );

  server.post(
    "/api/plants/:plantId/working-plan/choose",
    { schema: { ...step, summary: "Work on a plan that a run found beside others", body: ChooseRequest } },
    async (request) => {
      const { revision: expectedRevision, runId, place } = request.body;
      const input = { ...request.params, expectedRevision, runId, place };
      return valueOf(await app.commands.choosePlan(input, actorOf(request)));
    },
  );

  server.post(
    "/api/plants/:plantId/working-plan/publish",
    { schema: { ...step, summary: "Give the working plan out to the plant", body: PublishRequest } },
    async (request) => {
      const { revision: expectedRevision, planId, note, frozenUntil: until } = request.body;
      const frozenUntil = until === null ? null : Date.parse(until) / 1000;
      const input = { ...request.params, expectedRevision, planId, note, frozenUntil };
      return valueOf(await app.commands.publishPlan(input, actorOf(request)));
    },
  );

  server.get(
    "/api/plants/:plantId/publications",
    {
      schema: {
        tags: ["planning"],
        summary: "Plans that were given out to the plant, newest first",
        params: PlantPath,
        response: { 200: PublicationListResponse, ...failures },
      },
    },
    async (request) =>
      valueOf(await app.queries.listPublications(request.params, actorOf(request))).map(publicationOnTheWire),
  );
}

function stepOnTheWire({ undoTo: _, redoTo: __, records: ___, frozenUntil: ____, at, ...rest }: ListedStep) {
  return { ...rest, at: isoInstant(at) };
}

function publicationOnTheWire({ revision, planId, note, frozenUntil, by, at }: PlanStep) {
  const until = frozenUntil === null ? null : isoInstant(frozenUntil);
  return { revision, planId, note: note ?? "", frozenUntil: until, by, at: isoInstant(at) };
}
