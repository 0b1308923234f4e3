import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";

/**
 * Starts a worker thread from a module that lies beside the caller: `startThread(import.meta.url, "./solve-thread", data)`.
 * The module is named without its ending, because the sources are run as `.ts` (under a loader) and the build as `.js`.
 */
export type StartThread = (caller: string, module: string, data: unknown) => Worker;

export const startThread: StartThread = (caller, module, data) => {
  if (!fileURLToPath(caller).endsWith(".ts")) {
    return new Worker(new URL(`${module}.js`, caller), { workerData: data, execArgv: [] });
  }
  const entry = new URL(`${module}.ts`, caller);
  return new Worker(sourceBootstrap(entry), { workerData: data, execArgv: ["--conditions=source"] });
};

/** A thread does not inherit the loader of TypeScript sources: its first module registers it, then imports the entry. */
function sourceBootstrap(entry: URL): URL {
  const lines = [
    `import { register } from ${JSON.stringify(import.meta.resolve("tsx/esm/api"))};`,
    `register();`,
    `await import(${JSON.stringify(entry.href)});`,
  ];
  return new URL(`data:text/javascript,${encodeURIComponent(lines.join("\n"))}`);
}
