import { openEdits, type Plan } from "@formweek/scheduler";
import type { Assembled } from "./assembled.ts";

/** The same plan with its cost at the plant's prices. */
export function atOwnPrices({ problem }: Pick<Assembled, "problem">, plan: Plan): Plan {
  const opened = openEdits(problem, plan);
  if (!opened.ok) throw new Error("a problem that was solved is faulty at other prices");
  return opened.value.plan;
}
