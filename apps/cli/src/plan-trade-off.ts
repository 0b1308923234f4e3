import { ENGINE_VERSION, describePlan, findTradeOff } from "@formweek/application";
import type { Assembled, SolveRunner, SolveTask } from "@formweek/application";
import { writeFileSync } from "node:fs";
import { extname } from "node:path";
import type { ExitCode, Output } from "./outcome.ts";
import { progressText } from "./print-progress.ts";
import { refusalText } from "./print-refusal.ts";
import { tradeOffText } from "./print-trade-off.ts";

interface TradeOffTask {
  readonly assembled: Assembled;
  readonly params: SolveTask["params"];
  readonly threads: number;
  /** File of the first plan; the others stand beside it. Null: they are only compared. */
  readonly out: string | null;
}

interface Watch {
  readonly signal: AbortSignal;
  readonly output: Output;
}

/** plan.json, plan-2.json, plan-3.json … */
function numbered(out: string, number: number): string {
  if (number === 1) return out;
  const ending = extname(out);
  return `${out.slice(0, out.length - ending.length)}-${number}${ending}`;
}

/** Makes several plans of which none beats another, writes them, and prints how they compare. */
export async function planTradeOff(
  { assembled, params, threads, out }: TradeOffTask,
  solver: SolveRunner,
  { signal, output }: Watch,
): Promise<ExitCode> {
  const ask = { problem: assembled.problem, params, threads };
  const onProgress = (progress: Parameters<typeof progressText>[0]): void =>
    output.progress(progressText(progress));
  const found = await findTradeOff(solver, ask, { signal, onProgress });
  output.progress("");
  if (found.status !== "traded") {
    for (const line of refusalText(found)) output.warn(line);
    return 1;
  }
  const written: string[] = [];
  for (const { plan } of out === null ? [] : found.plans) {
    const origin = {
      engineVersion: ENGINE_VERSION,
      seed: params.seed,
      steps: found.steps,
      bound: found.base.bound,
    };
    const file = numbered(out ?? "", written.length + 1);
    writeFileSync(file, `${JSON.stringify(describePlan(assembled, plan, origin), null, 1)}\n`);
    written.push(file);
  }
  for (const line of tradeOffText(found, assembled.plant.currency)) output.say(line);
  for (const file of written) output.say(`Written to ${file}`);
  return 0;
}
