import { fork } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { FigureSheet } from "./figure.ts";

const part = "cancel, 2000 orders × 40 lines";

/** Processor time after the start at which the solve is cancelled, ms: closely spaced to the first plan and the bound, then in search. */
const instants = [0, 10, 25, 50, 100, 150, 200, 300, 400, 500, 600, 700, 850, 1000, 1250, 1500, 2000, 3000];

/** What a solve is cancelled at. */
export interface CancelTask {
  readonly afterMs: number;
  /** Whether it goes on from a plan, as a new solve does after a change of the order book. */
  readonly resumes: boolean;
}

/** How a cancelled solve ended. */
export interface CancelAnswer {
  readonly status: string;
  /** Processor time from the instant of the cancel to the result; negative: it ended before. */
  readonly latencyMs: number;
}

/** One cancel in a process of its own: code that has not run before is slow, and a planning run starts in a new thread too. */
function cancelOnce(task: CancelTask): Promise<CancelAnswer> {
  const child = fork(fileURLToPath(new URL("./cancel-once.ts", import.meta.url)), [JSON.stringify(task)]);
  return new Promise((resolve, reject) => {
    child.once("message", (answer) => {
      resolve(answer as CancelAnswer);
    });
    child.once("exit", (code) => {
      reject(new Error(`The cancelled solve ended with ${code}.`));
    });
  });
}

/** Cancels a solve of a large plant at several instants and reads how long each takes to end. */
export async function measureCancels(sheet: FigureSheet): Promise<void> {
  const add = (name: string, value: number) => sheet.add({ part, name, value, unit: "ms" });
  for (const resumes of [false, true]) {
    const from = resumes ? "resumed" : "new";
    const worst = new Map<string, number>();
    for (const afterMs of instants) {
      const { status, latencyMs } = await cancelOnce({ afterMs, resumes });
      const kind = status === "planned" ? "with a plan" : "before the first plan";
      add(`${from}, after ${afterMs} ms, ${kind}`, latencyMs);
      worst.set(kind, Math.max(worst.get(kind) ?? 0, latencyMs));
    }
    for (const [kind, latencyMs] of worst) add(`${from}, worst ${kind}`, latencyMs);
  }
}
