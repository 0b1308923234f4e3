import type { ObjectiveWeights } from "../problem/problem-data.ts";
import { criterionNamed, favouring, type Criterion } from "./criteria.ts";

/** What all else still counts while one criterion is favoured: enough to break ties and to keep orders planned. */
const SHARE = 0.2;

/** Prices under which one criterion counts for five times what it does beside the others; a plan's own prices come back by timing it again. */
export function favour(objective: ObjectiveWeights, name: Criterion["name"]): ObjectiveWeights {
  return favouring(objective, criterionNamed(name), SHARE);
}
