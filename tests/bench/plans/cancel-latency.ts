import { fork } from "node:child_process";
import { fileURLToPath } from "node:url";
import { assembleProblem } from "@formweek/application";
import { generatePlant } from "@formweek/demo-plant";
import { solve, type Plan } from "@formweek/scheduler";
import type { FigureSheet } from "./figure.ts";

const part = "cancel, 2000 orders × 40 lines";

/** Processor time after the start at which the solve is cancelled, ms: closely spaced to the first plan and the bound, then in search. */
const instants = [0, 10, 25, 50, 100, 150, 200, 300, 400, 500, 600, 700, 850, 1000, 1250, 1500, 2000, 3000];

/** Cancels at each instant, the quickest of which counts: other work on the machine only ever adds. */
const REPEATS = 3;

/** What is solved, and when it is cancelled. */
export interface CancelTask {
  readonly book: ReturnType<typeof generatePlant>;
  /** A plan to go on from, as a new solve does after a change of the order book; made elsewhere, as it is in a planning run. */
  readonly startFrom: Plan | null;
  readonly afterMs: number;
}

/** How a cancelled solve ended. */
export interface CancelAnswer {
  readonly status: string;
  /** Processor time from the instant of the cancel to the result; negative: it ended before. */
  readonly latencyMs: number;
}

/** A plan to go on from, made in few steps. */
function planOf({ book }: Pick<CancelTask, "book">): Plan {
  const { problem } = assembleProblem({ ...book, pins: [], now: 0 });
  const env = { monotonicMs: () => performance.now(), isCancelled: () => false, onProgress: () => undefined };
  const result = solve(problem, { seed: 1, maxSteps: 1, maxMs: null }, env);
  if (result.status !== "planned") throw new Error(`No plan to go on from: ${result.status}.`);
  return result.plan;
}

/** One cancel in a process of its own: code that has not run before is slow, and a planning run starts in a new thread too. */
function cancelOnce(task: CancelTask): Promise<CancelAnswer> {
  const child = fork(fileURLToPath(new URL("./cancel-once.ts", import.meta.url)));
  return new Promise((resolve, reject) => {
    child.once("message", (answer) => {
      resolve(answer as CancelAnswer);
    });
    child.once("exit", (code) => {
      reject(new Error(`The cancelled solve ended with ${code}.`));
    });
    child.send(task);
  });
}

async function quickestCancel(task: CancelTask): Promise<CancelAnswer> {
  const answers: CancelAnswer[] = [];
  for (let repeat = 0; repeat < REPEATS; repeat++) answers.push(await cancelOnce(task));
  return answers.reduce((best, each) => (each.latencyMs < best.latencyMs ? each : best));
}

/** Cancels a solve of a large plant at several instants and reads how long each takes to end. */
export async function measureCancels(sheet: FigureSheet): Promise<void> {
  const add = (name: string, value: number) => sheet.add({ part, name, value, unit: "ms" });
  const book = generatePlant({ lines: 40, orders: 2000, seed: 1 });
  const plan = planOf({ book });
  for (const startFrom of [null, plan]) {
    const from = startFrom === null ? "new" : "resumed";
    const worst = new Map<string, number>();
    for (const afterMs of instants) {
      const { status, latencyMs } = await quickestCancel({ book, startFrom, afterMs });
      const kind = status === "planned" ? "with a plan" : "before the first plan";
      add(`${from}, after ${afterMs} ms, ${kind}`, latencyMs);
      worst.set(kind, Math.max(worst.get(kind) ?? 0, latencyMs));
    }
    for (const [kind, latencyMs] of worst) add(`${from}, worst ${kind}`, latencyMs);
  }
}
