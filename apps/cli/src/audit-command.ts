import { assembleProblem, auditDocument } from "@formweek/application";
import { PlanDocument } from "@formweek/contracts";
import { existsSync, readFileSync, statSync } from "node:fs";
import type { Command } from "./command.ts";
import { neededFlag } from "./flags.ts";
import { ORDER_FLAGS, PLANT_FLAGS, loadOrders, loadPlant } from "./input.ts";
import { UsageError } from "./outcome.ts";

export const auditCommand: Command = {
  title:
    "npm run audit -- (--demo … | --plant … --orders …) --plan plan.json\nChecks a plan file against plant and orders: says valid, or lists every violation.",
  flags: { ...PLANT_FLAGS, ...ORDER_FLAGS, plan: { value: "plan.json", meaning: "the plan file" } },
  run: async ({ flags, ports, output }) => {
    const document = readPlan(neededFlag(flags, "plan", "plan.json"));
    const plant = await loadPlant(flags, ports, output);
    const orders = plant === null ? null : await loadOrders(flags, plant, { ports, output });
    if (plant === null || orders === null) return 2;
    const assembled = assembleProblem({
      plant,
      orders,
      pins: [],
      now: Date.parse(document.horizon.start) / 1000,
    });
    const { sameInputs, violations } = auditDocument(document, assembled);
    if (!sameInputs) {
      output.say(
        `inputs: the plan was made from other inputs (${document.inputHash}) than these (${assembled.inputHash}).`,
      );
    }
    for (const { rule, code, text } of violations) output.say(`rule ${rule}, ${code}: ${text}`);
    if (sameInputs && violations.length === 0) {
      output.say("valid");
      return 0;
    }
    output.say(`not valid: ${violations.length + (sameInputs ? 0 : 1)} findings`);
    return 1;
  },
};

function readPlan(path: string): PlanDocument {
  if (!existsSync(path))
    throw new UsageError(`${path} is not there.`, "Name a plan file that the plan command wrote.");
  if (statSync(path).isDirectory())
    throw new UsageError(`${path} is a folder.`, "Name a plan file that the plan command wrote.");
  const parsed = PlanDocument.safeParse(jsonOf(path));
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  const place =
    issue === undefined || issue.path.length === 0 ? "" : ` at ${issue.path.map(String).join(".")}`;
  throw new UsageError(
    `${path} is no plan file: ${issue?.message ?? "unreadable"}${place}.`,
    "Name a plan file that the plan command wrote.",
  );
}

function jsonOf(path: string): unknown {
  try {
    return JSON.parse(readFileSync(path, "utf8"));
  } catch {
    throw new UsageError(`${path} is no JSON.`, "Name a plan file that the plan command wrote.");
  }
}
