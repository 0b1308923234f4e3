import { localPlanner, type Actor } from "@formweek/application";
import type { FastifyRequest } from "fastify";
import { shellProblems } from "./error-handler.ts";
import { Refusal } from "./refusal.ts";

const header = "x-planner-name";
const longestName = 40;

/**
 * The planner of this machine under the name that the page sends (percent-encoded UTF-8). The name is what others are told
 * and nothing more: it proves nobody, and whoever reaches this machine may do the same with any name or none.
 */
export function namedPlanner({ headers }: Pick<FastifyRequest, "headers">): Actor {
  const sent = headers[header];
  if (sent === undefined) return localPlanner;
  const name = typeof sent === "string" ? decoded(sent) : null;
  if (name === null || !isName(name)) throw new Refusal(notAName(String(sent)));
  return { ...localPlanner, id: `${localPlanner.id}:${name}`, name };
}

function decoded(sent: string): string | null {
  try {
    return decodeURIComponent(sent);
  } catch {
    return null;
  }
}

/** No character that steers, hides or turns the text beside it. */
function isName(name: string): boolean {
  return (
    name.trim() === name &&
    name !== "" &&
    [...name].length <= longestName &&
    !/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u.test(name)
  );
}

function notAName(sent: string): Refusal["problem"] {
  return {
    ...shellProblems["invalid-request"],
    faults: [
      {
        path: header,
        problem: `is no name: ${JSON.stringify(sent.slice(0, 80))}`,
        remedy: `Send 1 to ${longestName} characters without control characters, percent-encoded as UTF-8, or leave the header out.`,
      },
    ],
  };
}
