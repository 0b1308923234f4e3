import { refusalOfOrders, refusalOfPlant } from "../commands/record-faults.ts";
import { type PlanFigures, planFigures } from "../planning/plan-figures.ts";
import type { TriedChange } from "../planning/run-findings.ts";
import { type Result, ok, refused } from "../result.ts";
import { applyChange } from "../scenarios/apply-scenario.ts";
import { candidateChanges } from "../scenarios/candidate-changes.ts";
import { groundOf } from "../scenarios/scenario-ground.ts";
import { turnedOrders } from "../scenarios/turned-orders.ts";
import { planBeside } from "./plan-beside.ts";
import { type Found, type Search, findingsAlone, recordsOf } from "./search-records.ts";

/** Changes that are tried. */
const MOST_TRIED = 12;
/** Share of the plan's cost below which a change is not worth its trouble: so much comes of searching alone. */
const LEAST_SAVING = 0.01;

/**
 * Tries single changes of plant or orders against the late orders of the plan, or for a cheaper one where none is late: one plan of the inputs as they are, then one with each
 * change, all on from the working plan and with the same budget. Stopped, it keeps those that were tried to their end.
 */
export async function searchHelp(search: Search): Promise<Result<Found>> {
  const records = await recordsOf(search, null);
  if (!records.ok) return records;
  const { snapshot, plan: working, frozen } = records.value;
  const refusal = refusalOfPlant(snapshot.plant) ?? refusalOfOrders(snapshot.orders, snapshot.plant);
  if (refusal !== null) return refused(refusal);
  const { ports, run, signal } = search;
  const at = ports.clock.now();
  const most = MOST_TRIED + 1;
  const { seed, maxSteps, maxMs } = run.params;
  const params = { seed, maxSteps, maxMs: maxMs === null ? null : maxMs / most };
  const begunMs = ports.clock.monotonicMs();
  const terms = { at, working, frozen, params, all: most, begunMs };
  const base = await planBeside(search, terms, { snapshot, done: 0 });
  if (!base.ok) return base;
  if (base.value === null) return ok(findingsAlone(null));
  const without = planFigures(base.value.assembled.problem, base.value.plan);
  const candidates = candidateChanges(base.value, groundOf({ snapshot, frozen, now: at }), MOST_TRIED);
  const tried: TriedChange[] = [];
  for (const [index, change] of candidates.entries()) {
    if (signal.aborted) break;
    const all = candidates.length + 1;
    const asked = { snapshot: applyChange(snapshot, change), done: index + 1 };
    const planned = await planBeside(search, { ...terms, all }, asked);
    if (!planned.ok) return planned;
    // what was cut short has had less time than what it is held against
    if (signal.aborted || planned.value === null) break;
    const { assembled, plan } = planned.value;
    const turned = turnedOrders(base.value, planned.value);
    tried.push({ change, with: planFigures(assembled.problem, plan), turned });
  }
  const changes = tried.filter((each) => helps(each.with, without)).sort((a, b) => a.with.cost - b.with.cost);
  return ok(findingsAlone({ kind: "help", without, tried: tried.length, changes }));
}

function helps(figures: PlanFigures, without: PlanFigures): boolean {
  const missed = ({ lateOrders, unplannedOrders }: PlanFigures): number => lateOrders + unplannedOrders;
  const saved = without.cost - figures.cost;
  return saved > 0 && (saved >= LEAST_SAVING * without.cost || missed(figures) < missed(without));
}
