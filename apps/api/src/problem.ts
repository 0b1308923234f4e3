import type { AppError, AppErrorCode } from "@formweek/application";
import type { ProblemCode, ProblemDetails } from "@formweek/contracts";

/** Failures that the HTTP shell finds itself, before a use case is asked. */
export type ShellProblemCode = Exclude<ProblemCode, AppErrorCode>;

/** The one table from codes to HTTP statuses. */
const statusOf: Readonly<Record<ProblemCode, number>> = {
  "not-found": 404,
  forbidden: 403,
  "unreadable-file": 422,
  "invalid-input": 422,
  "import-not-acceptable": 422,
  "order-book-changed": 409,
  "pins-changed": 409,
  "plant-changed": 409,
  "solve-in-progress": 409,
  "nothing-to-plan": 409,
  "problem-faulty": 422,
  "plan-rejected": 500,
  "solver-failed": 500,
  "working-plan-changed": 409,
  "edit-refused": 422,
  "hours-refused": 422,
  "frozen-runs": 409,
  "nothing-to-undo": 409,
  "nothing-to-redo": 409,
  "already-working-plan": 409,
  "not-working-plan": 409,
  "order-not-late": 422,
  "findings-outdated": 409,
  "plan-outrun": 409,
  "not-planned-yet": 409,
  "plan-over": 409,
  "plan-does-not-follow": 409,
  "promise-moved": 409,
  "offer-gone": 409,
  "holds-not-planned": 409,
  "hold-ended": 409,
  "hold-key-used": 409,
  "scenario-refused": 422,
  "scenario-changed": 409,
  "scenario-outdated": 409,
  "too-many-scenarios": 409,
  "conflicting-write": 409,
  "invalid-request": 400,
  "malformed-body": 400,
  "body-too-large": 413,
  "unsupported-media-type": 415,
  "too-many-requests": 429,
  "no-such-route": 404,
  "foreign-origin": 403,
  internal: 500,
};

/** A failure as the wire knows it, before it has a request. */
export interface Problem extends Omit<AppError, "code"> {
  readonly code: ProblemCode;
}

/** The one error body (RFC 9457), for the request at `path`. */
export function problemDetails(problem: Problem, path: string): ProblemDetails {
  return {
    type: `urn:formweek:problem:${problem.code}`,
    title: problem.title,
    status: statusOf[problem.code],
    detail: `${problem.cause} ${problem.remedy}`,
    instance: path,
    code: problem.code,
    cause: problem.cause,
    remedy: problem.remedy,
    faults: [...problem.faults],
    ...(problem.edit === undefined ? {} : { edit: problem.edit }),
    ...(problem.offer === undefined ? {} : { offer: problem.offer }),
    ...(problem.nearest === undefined ? {} : { nearest: [...problem.nearest] }),
  };
}
