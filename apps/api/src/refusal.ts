import type { Result } from "@formweek/application";
import type { Problem } from "./problem.ts";

/** Carries a refusal from a route to the error handler, which alone writes problem bodies. */
export class Refusal extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.title);
    this.problem = problem;
  }
}

/** The value of a use case's answer; a refusal goes to the error handler. */
export function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Refusal(result.error);
  return result.value;
}
