import { whyThen } from "../explain/why-late.ts";
import type { LateChain } from "../explain/late-chain.ts";
import type { Plan } from "../plan/plan.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import { solve } from "../solve-checked.ts";
import type { SolveEnv, SolveParams } from "../solve-env.ts";
import { candidateEdits } from "./candidate-edits.ts";
import { applyEdit, type ProblemEdit } from "./problem-edit.ts";

/** What a plan comes to in the figures that a remedy is judged by. */
export interface PlanEffect {
  readonly total: number;
  readonly lateOrders: number;
  readonly unplannedOrders: number;
  /** Σ seconds late over all orders. */
  readonly lateSeconds: number;
  /** Finish of the order in question; null when it is not planned. */
  readonly finishAt: number | null;
}

/** One edit, really solved. */
export interface Remedy {
  readonly edit: ProblemEdit;
  readonly before: PlanEffect;
  readonly after: PlanEffect;
  /** Money that the plan's cost falls by; what the edit itself costs is not in it unless it has a price (overtime). */
  readonly saves: number;
  readonly plan: Plan;
}

/** The order in question and how much to try. */
export interface RemedyAsk {
  readonly orderId: string;
  /** Edits from outside the problem, such as a line that could be approved; tried first. */
  readonly offers: readonly ProblemEdit[];
  /** At most so many edits are tried. */
  readonly most: number;
}

/** Money below which two plans cost the same. */
const LEAST_SAVING = 1e-6;

function effectOf(problem: ProblemData, plan: Plan, orderId: string): PlanEffect {
  const dueOf = new Map(problem.jobs.map((job) => [job.orderId, job.dueAt]));
  const finishOf = new Map<string, number>();
  for (const lot of plan.lots)
    finishOf.set(lot.orderId, Math.max(lot.finish, finishOf.get(lot.orderId) ?? lot.finish));
  let lateOrders = 0;
  let lateSeconds = 0;
  for (const [id, finish] of finishOf) {
    const late = finish - (dueOf.get(id) ?? finish);
    if (late <= 0) continue;
    lateOrders++;
    lateSeconds += late;
  }
  return {
    total: plan.objective.total,
    lateOrders,
    unplannedOrders: plan.unplanned.length,
    lateSeconds,
    finishAt: finishOf.get(orderId) ?? null,
  };
}

function chainsOf(problem: ProblemData, plan: Plan, orderId: string): LateChain[] {
  const chain = whyThen(problem, plan, orderId);
  return chain === null ? [] : [chain];
}

/** The cheapest plan first, then the sooner finish of the order. */
function byEffect(a: Remedy, b: Remedy): number {
  const finish = (remedy: Remedy): number => remedy.after.finishAt ?? Infinity;
  return a.after.total - b.after.total || (finish(a) === finish(b) ? 0 : finish(a) - finish(b));
}

/** How the changed problems are solved. */
export interface RemedySolving {
  readonly params: SolveParams;
  readonly env: SolveEnv;
  /** Called before each solve: how many are done, out of how many. */
  readonly onTried: (done: number, all: number) => void;
}

/**
 * What would help one order of a plan most: each edit that could shorten its chain is made, and the changed problem is solved
 * from the plan on with the given budget. The plan itself is given the same budget first, so that no remedy is praised for
 * what more search alone would have found. Those that help the order or the plan are ranked by the cost of the whole plan.
 * Deterministic for a step budget. Cancelled: the remedies found so far.
 */
export function remediesFor(
  problem: ProblemData,
  plan: Plan,
  { orderId, offers, most }: RemedyAsk,
  { params, env, onTried }: RemedySolving,
): readonly Remedy[] {
  const edits = [...offers, ...candidateEdits(problem, chainsOf(problem, plan, orderId))].slice(0, most);
  const solveFrom = (changed: ProblemData): Plan | null => {
    const result = solve(changed, { ...params, startFrom: plan }, env);
    return result.status === "planned" ? result.plan : null;
  };
  onTried(0, edits.length + 1);
  const before = effectOf(problem, solveFrom(problem) ?? plan, orderId);
  const remedies: Remedy[] = [];
  for (const [index, edit] of edits.entries()) {
    if (env.isCancelled()) break;
    onTried(index + 1, edits.length + 1);
    const edited = applyEdit(problem, edit);
    const helped = edited.ok ? solveFrom(edited.problem) : null;
    if (!edited.ok || helped === null) continue;
    const after = effectOf(edited.problem, helped, orderId);
    const sooner = (after.finishAt ?? Infinity) < (before.finishAt ?? Infinity);
    if (after.total < before.total - LEAST_SAVING || sooner)
      remedies.push({ edit, before, after, saves: before.total - after.total, plan: helped });
  }
  return remedies.sort(byEffect);
}
