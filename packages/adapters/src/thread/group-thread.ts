import type { SolveProgressReport } from "@formweek/application";
import type { Plan } from "@formweek/scheduler";
import type { Worker } from "node:worker_threads";
import type { SolveThreadMessage, SolveThreadOrder } from "./thread-protocol.ts";

/** A thread of the search ended without an answer. */
export class SolveThreadDied extends Error {
  constructor(reason: string, cause?: unknown) {
    super(`A thread of the search ended without a result: ${reason}`, { cause });
    this.name = "SolveThreadDied";
  }
}

/** What a thread answers to its start or to an order. */
export type GroupAnswer = Exclude<SolveThreadMessage, { readonly kind: "progress" | "better plan" }>;

/** Who is told what happens within a round. */
export interface GroupListener {
  readonly onProgress: (progress: SolveProgressReport) => void;
  readonly onBetterPlan: (plan: Plan) => void;
}

/** A thread that carries some members of a portfolio, asked one thing at a time. Every wait rejects with `SolveThreadDied` when it dies. */
export class GroupThread {
  private readonly worker: Worker;
  private readonly died: Promise<never>;
  private answered: (answer: GroupAnswer) => void = () => undefined;
  private awaited: Promise<GroupAnswer>;

  constructor(worker: Worker, { onProgress, onBetterPlan }: GroupListener) {
    this.worker = worker;
    this.awaited = this.nextAnswer();
    this.died = new Promise((_, reject) => {
      worker.once("error", (error: unknown) => reject(new SolveThreadDied(String(error), error)));
      worker.once("exit", (code) => reject(new SolveThreadDied(`it exited with code ${code}`)));
    });
    this.died.catch(() => undefined); // a thread that nobody waits for any more may end
    worker.on("message", (message: SolveThreadMessage) => {
      if (message.kind === "progress") onProgress(message.progress);
      else if (message.kind === "better plan") onBetterPlan(message.plan);
      else this.answered(message);
    });
  }

  /** The answer to its start, or to the last order. */
  answer(): Promise<GroupAnswer> {
    return Promise.race([this.awaited, this.died]);
  }

  ask(order: SolveThreadOrder): Promise<GroupAnswer> {
    this.awaited = this.nextAnswer();
    this.worker.postMessage(order);
    return this.answer();
  }

  end(): void {
    void this.worker.terminate();
  }

  private nextAnswer(): Promise<GroupAnswer> {
    return new Promise((resolve) => (this.answered = resolve));
  }
}
