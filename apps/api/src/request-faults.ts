import { type FieldFault, valueFault } from "@formweek/application";
import type { FastifyError, FastifyRequest } from "fastify";

/** A place of a request that its schema refuses, as the validator names it. */
interface Issue {
  readonly instancePath: string;
  readonly message?: string | undefined;
  /** Code of the validator, and what goes with it. */
  readonly keyword: string;
  readonly params: Readonly<Record<string, unknown>>;
}

/** Letters of a value that are shown. */
const MOST_SHOWN = 60;

/** What is wrong with the values of a request: each named with what came there and what to send instead. */
export function requestFaults(
  issues: readonly Issue[],
  part: FastifyError["validationContext"],
  request: FastifyRequest,
): readonly FieldFault[] {
  return issues.map(({ instancePath, message = "is not valid", keyword, params }) => {
    const steps = instancePath.split("/").filter((step) => step !== "");
    const came = valueAt(partOf(request, part), steps);
    return {
      path: steps.join("."),
      problem: came === undefined ? `is missing: ${message}` : `${shown(came)}: ${message}`,
      remedy:
        came === undefined
          ? "Add it, as the interface's description says (/api/docs)."
          : "Send a value that the interface's description allows (/api/docs).",
      cause: valueFault({ ...params, code: keyword }, came === undefined),
    };
  });
}

function partOf(
  { body, query, params, headers }: FastifyRequest,
  part: FastifyError["validationContext"],
): unknown {
  if (part === "querystring") return query;
  if (part === "params") return params;
  return part === "headers" ? headers : body;
}

function valueAt(whole: unknown, steps: readonly string[]): unknown {
  return steps.reduce<unknown>(
    (part, step) =>
      typeof part === "object" && part !== null && Object.hasOwn(part, step)
        ? (part as Readonly<Record<string, unknown>>)[step]
        : undefined,
    whole,
  );
}

function shown(value: unknown): string {
  const text = JSON.stringify(value);
  return text.length <= MOST_SHOWN ? text : `${text.slice(0, MOST_SHOWN)}…`;
}
