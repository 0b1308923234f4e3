import { PGlite, type Results } from "@electric-sql/pglite";
import { parentPort, workerData } from "node:worker_threads";
import { DurableFileSystem } from "./durable-file-system.ts";
import type {
  QueryResult,
  SqlFailure,
  ThreadData,
  ThreadGreeting,
  ThreadReply,
  ThreadRequest,
} from "./thread-protocol.ts";

/** Entry of the thread that holds the embedded database: PGlite works synchronously and would hold up the event loop of its thread. */
const port = parentPort;

async function serve({ folder }: ThreadData): Promise<void> {
  const opened = await open(folder);
  if (typeof opened === "string") return greet({ kind: "refused", message: opened });
  port?.on("message", (request: ThreadRequest) => void answer(opened, request));
  greet({ kind: "open" });
}

async function open(folder: string): Promise<PGlite | string> {
  try {
    return await PGlite.create({
      fs: new DurableFileSystem(folder),
      // "-F" turns fsync off; "fsync" as the sync method because fdatasync does nothing in WebAssembly.
      startParams: [
        ...PGlite.defaultStartParams.filter((param) => param !== "-F"),
        ...["-c", "fsync=on", "-c", "wal_sync_method=fsync", "-c", "shared_buffers=32MB"],
      ],
      parsers: textParsers,
    });
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** Dates and times stay text, as the column mappings expect them. */
const asText = (value: string): string => value;
const textParsers = Object.fromEntries(
  [1082, 1114, 1184, 1186, 1115, 1182, 1185, 1187, 1231].map((type) => [type, asText]),
);

async function answer(database: PGlite, request: ThreadRequest): Promise<void> {
  try {
    reply({ id: request.id, kind: "result", result: await run(database, request) });
  } catch (error) {
    reply({ id: request.id, kind: "failure", failure: failureOf(error) });
  }
  if (request.kind === "close") port?.close();
}

async function run(database: PGlite, request: ThreadRequest): Promise<QueryResult> {
  switch (request.kind) {
    case "query":
      return asResult(await database.query(request.text, [...request.values], { rowMode: request.rowMode }));
    case "close":
      await database.close();
      return { rows: [], fields: [] };
  }
}

function asResult(results: Results<unknown>): QueryResult {
  return { rows: results.rows, fields: results.fields, affectedRows: results.affectedRows };
}

function failureOf(error: unknown): SqlFailure {
  const { message, code, detail, constraint } = error as Partial<SqlFailure>;
  return { message: message ?? String(error), code, detail, constraint };
}

function greet(greeting: ThreadGreeting): void {
  port?.postMessage(greeting);
}

function reply(message: ThreadReply): void {
  port?.postMessage(message);
}

if (port !== null) await serve(workerData as ThreadData);
