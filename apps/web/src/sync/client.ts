import { ProblemDetails, type EditRefusal, type FieldFault } from "@formweek/contracts";
import type { ZodType } from "zod";
import { takeFirst } from "./first-calls.ts";
import { nameHeader } from "./planner-name.ts";
import { watchCall } from "./slow-calls.ts";

/** Why a call failed, in words for the planner. `status` 0: no answer arrived. */
export interface CallProblem {
  readonly status: number;
  readonly code: string;
  readonly title: string;
  readonly cause: string;
  readonly remedy: string;
  readonly faults: readonly FieldFault[];
  /** The rule that stands against a change by hand. */
  readonly edit?: EditRefusal;
  /** What can be promised now, where an offer has moved. */
  readonly offer?: NonNullable<ProblemDetails["offer"]>;
  /** Ids of products that look most like the one that is not known. */
  readonly nearest?: readonly string[];
}

/** Carries a `CallProblem` through the query library, which knows failures as exceptions. */
export class CallError extends Error {
  readonly problem: CallProblem;
  constructor(problem: CallProblem) {
    super(problem.title);
    this.problem = problem;
  }
}

/** Codes that the client itself gives; their words are in the catalogue. */
export const silentServer = "server-silent";
export const oddAnswer = "server-odd";

export interface Call<Answer> {
  readonly path: string;
  readonly answer: ZodType<Answer>;
  readonly method?: "GET" | "POST" | "PUT" | "DELETE";
  /** JSON, or a form with files. */
  readonly body?: FormData | Readonly<Record<string, unknown>>;
  readonly signal?: AbortSignal;
}

/** One call of the API: the answer parsed, or a `CallError`. */
export async function call<Answer>({ answer, ...request }: Call<Answer>): Promise<Answer> {
  const response = await ask(request);
  const content: unknown = response.status === 204 ? null : await response.json().catch(() => undefined);
  if (!response.ok) throw new CallError(problemOf(response.status, content));
  const parsed = answer.safeParse(content);
  if (!parsed.success) throw new CallError(clientProblem(oddAnswer, response.status, parsed.error.message));
  return parsed.data;
}

/** As `call`, for an answer that is a file. */
export async function callFile(request: Omit<Call<unknown>, "answer">): Promise<Blob> {
  const response = await ask(request);
  if (response.ok) return response.blob();
  throw new CallError(problemOf(response.status, await response.json().catch(() => undefined)));
}

function ask({ path, method = "GET", body, signal }: Omit<Call<unknown>, "answer">): Promise<Response> {
  const isForm = body instanceof FormData;
  return reach(`/api${path}`, {
    method,
    headers: {
      ...(method === "GET" ? {} : nameHeader()),
      ...(body === undefined || isForm ? {} : { "content-type": "application/json" }),
    },
    ...(body === undefined ? {} : { body: isForm ? body : JSON.stringify(body) }),
    ...(signal === undefined ? {} : { signal }),
  });
}

async function reach(url: string, init: RequestInit): Promise<Response> {
  const ended = watchCall();
  try {
    const ahead = init.method === "GET" ? takeFirst(url) : undefined;
    return await (ahead ?? fetch(url, init));
  } catch (cause) {
    if (cause instanceof DOMException && cause.name === "AbortError") throw cause;
    throw new CallError(clientProblem(silentServer, 0, ""));
  } finally {
    ended();
  }
}

function problemOf(status: number, content: unknown): CallProblem {
  const parsed = ProblemDetails.safeParse(content);
  return parsed.success
    ? { ...parsed.data, status }
    : clientProblem(status >= 502 ? silentServer : oddAnswer, status, "");
}

function clientProblem(code: string, status: number, cause: string): CallProblem {
  return { status, code, title: code, cause, remedy: "", faults: [] };
}
