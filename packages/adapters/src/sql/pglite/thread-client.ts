import type { Worker } from "node:worker_threads";
import type {
  QueryResult,
  RowMode,
  SqlFailure,
  ThreadGreeting,
  ThreadReply,
  ThreadRequest,
} from "./thread-protocol.ts";

/** A statement the database refused; `code` is the SQLSTATE. */
class EmbeddedSqlError extends Error {
  readonly code: string | undefined;
  readonly detail: string | undefined;
  readonly constraint: string | undefined;
  constructor(failure: SqlFailure) {
    super(failure.message);
    this.name = "EmbeddedSqlError";
    this.code = failure.code;
    this.detail = failure.detail;
    this.constraint = failure.constraint;
  }
}

/** Runs statements; what the column mapper needs of a connection. */
export interface StatementRunner {
  readonly query: (
    text: string,
    values?: readonly unknown[],
    options?: { readonly rowMode?: RowMode },
  ) => Promise<QueryResult>;
}

/** The embedded database, seen from outside its thread. Statements outside a transaction wait while one is open. */
export interface EmbeddedClient extends StatementRunner {
  readonly transaction: <T>(work: (runner: StatementRunner) => Promise<T>) => Promise<T>;
  readonly close: () => Promise<void>;
}

interface Waiting {
  readonly resolve: (result: QueryResult) => void;
  readonly reject: (error: Error) => void;
}

/** Resolves once the thread has opened the database; rejects with its reason if it could not. */
export async function connectToThread(thread: Worker): Promise<EmbeddedClient> {
  const waiting = new Map<number, Waiting>();
  let lost: Error | null = null;
  let nextId = 0;
  const fail = (error: Error): void => {
    lost ??= error;
    for (const { reject } of waiting.values()) reject(lost);
    waiting.clear();
  };
  await greeting(thread);
  thread.on("error", (error: unknown) => fail(new Error("The embedded database stopped.", { cause: error })));
  thread.on("exit", () => fail(new Error("The embedded database is closed.")));
  thread.on("message", (reply: ThreadReply) => {
    const call = waiting.get(reply.id);
    waiting.delete(reply.id);
    if (reply.kind === "result") call?.resolve(reply.result);
    else call?.reject(new EmbeddedSqlError(reply.failure));
  });

  const send = (request: RequestBody): Promise<QueryResult> =>
    new Promise((resolve, reject) => {
      if (lost !== null) return reject(lost);
      const id = nextId++;
      waiting.set(id, { resolve, reject });
      thread.postMessage({ ...request, id } satisfies ThreadRequest);
    });
  const runner: StatementRunner = {
    query: (text, values = [], options = {}) =>
      send({ kind: "query", text, values, rowMode: options.rowMode ?? "object" }),
  };
  const oneAtATime = turnstile();
  return {
    query: (...statement) => oneAtATime(() => runner.query(...statement)),
    transaction: (work) => oneAtATime(() => inTransaction(runner, work)),
    close: () =>
      oneAtATime(async () => {
        if (lost !== null) return;
        await send({ kind: "close" });
        await thread.terminate();
      }),
  };
}

type RequestBody = ThreadRequest extends infer Request
  ? Request extends ThreadRequest
    ? Omit<Request, "id">
    : never
  : never;

function greeting(thread: Worker): Promise<void> {
  return new Promise((resolve, reject) => {
    thread.once("error", reject);
    thread.once("message", (message: ThreadGreeting) => {
      thread.off("error", reject);
      if (message.kind === "open") resolve();
      else reject(new Error(message.message));
    });
  });
}

async function inTransaction<T>(
  runner: StatementRunner,
  work: (runner: StatementRunner) => Promise<T>,
): Promise<T> {
  await runner.query("begin");
  try {
    const result = await work(runner);
    await runner.query("commit");
    return result;
  } catch (error) {
    await runner.query("rollback");
    throw error;
  }
}

/** Calls run one after another, in the order of asking; a failed one does not hold up the next. */
function turnstile(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const mine = last.then(work, work);
    last = mine.catch(() => undefined);
    return mine;
  };
}
