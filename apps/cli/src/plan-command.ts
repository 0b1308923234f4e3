import { ENGINE_VERSION, assembleProblem, describePlan, findRemedies } from "@formweek/application";
import { existsSync, statSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import type { Command, CommandContext } from "./command.ts";
import { numberFlag, wholeFlag } from "./flags.ts";
import type { Flags } from "./flags.ts";
import { ORDER_FLAGS, PLANT_FLAGS, loadOrders, loadPlant } from "./input.ts";
import { planTradeOff } from "./plan-trade-off.ts";
import { UsageError } from "./outcome.ts";
import { planText } from "./print-plan.ts";
import { progressText } from "./print-progress.ts";
import { refusalText } from "./print-refusal.ts";
import { remedyText } from "./print-remedies.ts";

const DEFAULT_SECONDS = 10;

export const planCommand: Command = {
  title:
    "npm run plan -- (--demo calm|full|breakdown | --plant <folder or file> --orders <file>) [options]\nPlans the orders, prints a schedule per line, and writes the plan file.",
  flags: {
    ...PLANT_FLAGS,
    ...ORDER_FLAGS,
    seconds: { value: "S", meaning: `time to search, ${DEFAULT_SECONDS} by default` },
    steps: { value: "N", meaning: "search so many steps instead: the same plan every time" },
    threads: { value: "T", meaning: "threads to search in; 1 by default" },
    members: {
      value: "M",
      meaning: "searches that exchange their plans, each with its own seed; as many as threads by default",
    },
    seed: { value: "N", meaning: "seed of the search, 1 by default" },
    remedies: {
      value: "N",
      meaning: "for the N worst late orders, try what would help: the same time again for each remedy tried",
    },
    "trade-off": {
      value: null,
      meaning:
        "several plans of which none beats another, in the same time; --out writes all: plan.json, plan-2.json …",
    },
    out: { value: "plan.json", meaning: "write the plan file" },
  },
  run: async (context) => {
    const { flags, ports, output, stopSignal } = context;
    const threads = wholeFlag(flags, "threads", [1, 64]) ?? 1;
    const members = wholeFlag(flags, "members", [1, 64]) ?? threads;
    const params = { ...budgetOf(context), members };
    const helped = wholeFlag(flags, "remedies", [0, 1000]) ?? 0;
    const out = outFile(flags);
    if (flags.has("trade-off") && helped > 0)
      throw new UsageError("--trade-off and --remedies were both given.", "Give one of them.");
    const plant = await loadPlant(flags, ports, output);
    const orders = plant === null ? null : await loadOrders(flags, plant, { ports, output });
    if (plant === null || orders === null) return 1;
    const assembled = assembleProblem({ plant, orders, pins: [], now: ports.clock.now() });
    const signal = stopSignal();
    if (flags.has("trade-off"))
      return planTradeOff({ assembled, params, threads, out }, ports.solver, { signal, output });
    const result = await ports.solver.solve({
      problem: assembled.problem,
      params,
      threads,
      onProgress: (progress) => output.progress(progressText(progress)),
      signal,
    });
    output.progress("");
    if (result.status !== "planned") {
      for (const line of refusalText(result)) output.warn(line);
      return 1;
    }
    const document = describePlan(assembled, result.plan, {
      engineVersion: ENGINE_VERSION,
      seed: params.seed,
      steps: result.statistics.steps,
      bound: result.bound,
    });
    if (out !== null) writeFileSync(out, `${JSON.stringify(document, null, 1)}\n`); // first: a closed terminal must not cost the plan
    for (const line of planText(document)) output.say(line);
    if (out !== null) output.say(`Written to ${out}`);
    for (const { orderId } of document.late.slice(0, helped)) {
      if (signal.aborted) break;
      const { remedies } = await findRemedies(
        ports.solver,
        { assembled, plan: result.plan, orderId, most: MOST_REMEDIES, params },
        { signal, onTried: (done, all) => output.progress(`${orderId}: remedy ${done} of ${all}`) },
      );
      output.progress("");
      for (const line of remedyText(assembled, orderId, remedies)) output.say(line);
    }
    return 0;
  },
};

/** Edits that are tried for one order. */
const MOST_REMEDIES = 8;

/** Where the plan goes, looked at before the search so that no work is lost; null when it is only printed. */
function outFile(flags: Flags): string | null {
  const out = flags.get("out");
  if (out === undefined) return null;
  if (existsSync(out) && statSync(out).isDirectory())
    throw new UsageError(`${out} is a folder.`, "Name a file, such as plan.json.");
  if (!existsSync(dirname(out)))
    throw new UsageError(`The folder ${dirname(out)} is not there.`, "Make it first, or name another file.");
  return out;
}

function budgetOf({ flags }: CommandContext): {
  readonly seed: number;
  readonly maxSteps: number | null;
  readonly maxMs: number | null;
} {
  const steps = wholeFlag(flags, "steps", [0, 1_000_000_000]);
  const seconds = numberFlag(flags, "seconds", [0, 86_400]);
  if (steps !== null && seconds !== null)
    throw new UsageError("--steps and --seconds were both given.", "Give one of them.");
  const seed = wholeFlag(flags, "seed", [0, 4_294_967_295]) ?? 1;
  return steps === null
    ? { seed, maxSteps: null, maxMs: (seconds ?? DEFAULT_SECONDS) * 1000 }
    : { seed, maxSteps: steps, maxMs: null };
}
