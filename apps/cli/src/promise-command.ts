import {
  ENGINE_VERSION,
  assembleProblem,
  deskOnPlan,
  describePlan,
  findAlternatives,
  promiseGiven,
} from "@formweek/application";
import type { Enquiry } from "@formweek/application";
import type { Command } from "./command.ts";
import { neededFlag, numberFlag, wholeFlag } from "./flags.ts";
import { ORDER_FLAGS, PLANT_FLAGS, loadOrders, loadPlant } from "./input.ts";
import { UsageError } from "./outcome.ts";
import { progressText } from "./print-progress.ts";
import { alternativesText, promiseText } from "./print-promise.ts";
import { refusalText } from "./print-refusal.ts";

/** Time to plan the orders that are there already. */
const DEFAULT_SECONDS = 5;

export const promiseCommand: Command = {
  title:
    "npm run promise -- (--demo calm|full|breakdown | --plant <folder or file> --orders <file>) --product <id or name> --pieces N [options]\nPlans the orders, then says when one more could be ready with no other order later than promised, and what else could be done.",
  flags: {
    ...PLANT_FLAGS,
    ...ORDER_FLAGS,
    product: { value: "<id or name>", meaning: "product asked for" },
    pieces: { value: "N", meaning: "pieces asked for" },
    wanted: {
      value: "YYYY-MM-DD",
      meaning: "day, or day and time, by the plant's clock; a day means its end",
    },
    parts: { value: null, meaning: "may be delivered in parts" },
    seconds: { value: "S", meaning: `time to plan, ${DEFAULT_SECONDS} by default` },
    steps: { value: "N", meaning: "plan in so many steps instead: the same answer every time" },
    seed: { value: "N", meaning: "seed of the plan, 1 by default" },
  },
  run: async ({ flags, ports, output, stopSignal }) => {
    const enquiry = enquiryOf(flags);
    const steps = wholeFlag(flags, "steps", [0, 1_000_000_000]);
    const seconds = numberFlag(flags, "seconds", [0, 86_400]);
    if (steps !== null && seconds !== null)
      throw new UsageError("--steps and --seconds were both given.", "Give one of them.");
    const seed = wholeFlag(flags, "seed", [0, 4_294_967_295]) ?? 1;
    const plant = await loadPlant(flags, ports, output);
    const orders = plant === null ? null : await loadOrders(flags, plant, { ports, output });
    if (plant === null || orders === null) return 1;
    const now = ports.clock.now();
    const assembled = assembleProblem({ plant, orders, pins: [], now });
    const result = await ports.solver.solve({
      problem: assembled.problem,
      params: { seed, maxSteps: steps, maxMs: steps === null ? (seconds ?? DEFAULT_SECONDS) * 1000 : null },
      threads: 1,
      onProgress: (progress) => output.progress(progressText(progress)),
      signal: stopSignal(),
    });
    output.progress("");
    if (result.status !== "planned") {
      for (const line of refusalText(result)) output.warn(line);
      return 1;
    }
    const origin = {
      engineVersion: ENGINE_VERSION,
      seed,
      steps: result.statistics.steps,
      bound: result.bound,
    };
    const document = describePlan(assembled, result.plan, origin);
    const standing = deskOnPlan({ plant, orders, document }, now);
    if (!standing.ok) return refusedWith(standing.error);
    const given = promiseGiven(standing.value, enquiry, now);
    if (!given.ok) return refusedWith(given.error);
    for (const line of promiseText(given.value, plant.timeZone)) output.say(line);
    const others = await findAlternatives(standing.value, enquiry, ports.clock);
    if (others.ok)
      for (const line of alternativesText(others.value, given.value, plant.timeZone)) output.say(line);
    return given.value.outcome.status === "impossible" ? 1 : 0;
  },
};

function enquiryOf(flags: Parameters<Command["run"]>[0]["flags"]): Enquiry {
  const product = neededFlag(flags, "product", "with a product's id or name");
  neededFlag(flags, "pieces", "with a number of pieces");
  const pieces = wholeFlag(flags, "pieces", [1, 1_000_000_000]);
  return {
    product,
    pieces: pieces ?? 0,
    wanted: flags.get("wanted") ?? null,
    partsAllowed: flags.has("parts"),
  };
}

/** What is wrong with the enquiry, as a usage error: nothing was answered. */
function refusedWith({
  faults,
  cause,
  remedy,
}: {
  readonly faults: readonly { readonly path: string; readonly problem: string; readonly remedy: string }[];
  readonly cause: string;
  readonly remedy: string;
}): never {
  if (faults.length === 0) throw new UsageError(cause, remedy);
  const lines = faults.map((fault) => `--${fault.path}: ${fault.problem} ${fault.remedy}`);
  throw new UsageError(lines.join("\n"), "");
}
