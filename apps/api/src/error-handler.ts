import type { Log } from "@formweek/application";
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { hasZodFastifySchemaValidationErrors } from "fastify-type-provider-zod";
import { type Problem, type ShellProblemCode, problemDetails } from "./problem.ts";
import { requestFaults } from "./request-faults.ts";
import { Refusal } from "./refusal.ts";

/** Makes every failure of the server one problem body; anything unforeseen is logged and answered without its details. */
export function answerFailures(server: FastifyInstance, log: Log): void {
  server.setErrorHandler((error: FastifyError, request, reply) => {
    const problem = problemOf(error, request);
    if (problem.code === "internal")
      log.error(
        "A request failed unforeseen",
        { method: request.method, url: request.routeOptions.url ?? "" },
        error,
      );
    return sendProblem(reply, request, problem);
  });
}

/** Answers a request with a problem body. */
export function sendProblem(reply: FastifyReply, request: FastifyRequest, problem: Problem): FastifyReply {
  const details = problemDetails(problem, request.url.split("?")[0] ?? request.url);
  return reply
    .code(details.status)
    .header("content-type", "application/problem+json; charset=utf-8")
    .serializer(JSON.stringify)
    .send(details);
}

function problemOf(error: FastifyError | Refusal, request: FastifyRequest): Problem {
  if (error instanceof Refusal) return error.problem;
  if (hasZodFastifySchemaValidationErrors(error)) {
    const faults = requestFaults(error.validation, error.validationContext, request);
    return { ...shellProblems["invalid-request"], faults };
  }
  return shellProblems[codeOf(error)];
}

/** Errors of the framework by their code, else by their status. */
function codeOf(error: FastifyError): Exclude<ShellProblemCode, "no-such-route" | "foreign-origin"> {
  switch (error.statusCode) {
    case 400:
    case 406:
      return "malformed-body";
    case 413:
      return "body-too-large";
    case 415:
      return "unsupported-media-type";
    case 429:
      return "too-many-requests";
    default:
      return "internal";
  }
}

/** Texts of the failures that the shell finds itself. */
export const shellProblems: Readonly<Record<ShellProblemCode, Problem>> = {
  "invalid-request": {
    code: "invalid-request",
    title: "The request is not valid.",
    cause: "At least one value is missing, of the wrong kind or out of range.",
    remedy: "Correct the values named below and send it again.",
    faults: [],
  },
  "malformed-body": {
    code: "malformed-body",
    title: "The request could not be read.",
    cause: "Its body is not what its content type says, or the form is incomplete.",
    remedy: "Send JSON, or for imports a form with one or more files.",
    faults: [],
  },
  "body-too-large": {
    code: "body-too-large",
    title: "The request is too large.",
    cause: "A file, the number of files or the body is above the limit.",
    remedy: "Split the file, or leave out sheets that are not needed.",
    faults: [],
  },
  "unsupported-media-type": {
    code: "unsupported-media-type",
    title: "This kind of content is not taken here.",
    cause: "The content type of the request is not one that this address reads.",
    remedy: "Send application/json, or multipart/form-data for imports.",
    faults: [],
  },
  "too-many-requests": {
    code: "too-many-requests",
    title: "Too many requests.",
    cause: "More requests came from this address in a minute than the server takes.",
    remedy: "Wait a minute and try again.",
    faults: [],
  },
  "no-such-route": {
    code: "no-such-route",
    title: "There is nothing at this address.",
    cause: "No part of the interface has this address and method.",
    remedy: "See /api/docs for what there is.",
    faults: [],
  },
  "foreign-origin": {
    code: "foreign-origin",
    title: "The request came from another site.",
    cause: "A page of another origin, or a name that is not this machine's, sent it.",
    remedy: "Open the planner by its own address and repeat the step there.",
    faults: [],
  },
  internal: {
    code: "internal",
    title: "Something went wrong in the planner.",
    cause: "This is a fault of the planner, not of your data; the log of the server has the details.",
    remedy: "Try again. If it happens again, report the time and what you did.",
    faults: [],
  },
};
