import { NEVER } from "../problem/calendar.ts";
import { compile } from "../problem/compile.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import { changeBound } from "./change-bound.ts";
import { leastChangeSeconds } from "./change-need.ts";
import { hostingOf } from "./hosting.ts";
import { lastEndBound } from "./last-end-bound.ts";
import { latenessBound } from "./lateness-bound.ts";
import { ordersAlone, type OrdersAlone } from "./orders-alone.ts";
import { partitionBound, type PartitionAsk } from "./partition-bound.ts";
import { leastGroups, setupGroups, type SetupGroup } from "./setup-groups.ts";
import { finish, type Work } from "../work/work.ts";

/**
 * What no plan can go below. `total` holds for every plan. The parts hold for plans that leave out no order but those
 * that no plan can have: each is what that term alone must come to.
 */
export interface PlanBound {
  /** money */
  readonly total: number;
  /** money of lateness: weighted tardiness and late orders */
  readonly lateness: number;
  /** money of changes: machine time, team time and scrap */
  readonly changes: number;
  /** minutes of machine time in changes */
  readonly changeMinutes: number;
}

/** The price of leaving an order out, shared between the parts so that each may leave it out at its share. */
interface LeavingOut {
  /** [job] money */
  readonly inLateness: Float64Array;
  /** [group] money for all its orders */
  readonly inChanges: Float64Array;
}

/** Share of the dearest change that the change part asks of a group's price: more than any group can cost it. */
const DEAREST_CHANGES = 3;

function shareLeavingOut(
  problem: CompiledProblem,
  ask: { readonly groups: readonly SetupGroup[]; readonly money: Float64Array; readonly lastEnd: number },
): LeavingOut {
  const { changes, jobs } = problem;
  const dearest = changes.cost.reduce((most, cost) => Math.max(most, cost), 0);
  const inLateness = jobs.unplanned.map((price) => price - ask.lastEnd);
  const inChanges = Float64Array.from(ask.groups, ({ jobs: members }) => {
    const each = (DEAREST_CHANGES * dearest) / members.length;
    let sum = 0;
    for (const job of members) {
      // lateness keeps at least what the order alone costs it
      const share = Math.max(0, Math.min(each, inLateness[job]! - ask.money[job]!));
      inLateness[job]! -= share;
      sum += share;
    }
    return sum;
  });
  return { inLateness, inChanges };
}

/** [job] money of its lateness if it were alone; 0 where it cannot be planned */
function moneyAlone(problem: CompiledProblem, alone: OrdersAlone): Float64Array {
  const { due, latePerSecond, lateOnce } = problem.jobs;
  return alone.earliestEnd.map((end, job) => {
    const late = end >= NEVER ? 0 : end - due[job]!;
    return late > 0 ? late * latePerSecond[job]! + lateOnce[job]! : 0;
  });
}

/** Money of the orders that no plan can have. */
function impossible(problem: CompiledProblem, alone: OrdersAlone): number {
  return problem.jobs.unplanned.reduce(
    (sum, price, job) => sum + (alone.earliestEnd[job]! >= NEVER ? price : 0),
    0,
  );
}

/** Money of the last end; 0 where leaving an order out may be cheaper, which this part does not weigh. */
function lastEndMoney(problem: CompiledProblem, alone: OrdersAlone): number {
  if (problem.makespanPrice === 0) return 0;
  const money = problem.makespanPrice * lastEndBound(problem, alone);
  return problem.jobs.unplanned.every((price) => price >= money) ? money : 0;
}

/** The bound on a plant of any size: lateness, changes and last end, each by itself, and their sum. */
function* sumOfParts(problem: CompiledProblem, alone: OrdersAlone): Work<PlanBound> {
  const groups = setupGroups(problem, alone);
  yield;
  const needed = leastGroups(groups);
  const hosting = hostingOf(problem, alone);
  yield;
  const changeSeconds = yield* leastChangeSeconds(problem, groups, hosting);
  const lastEnd = lastEndMoney(problem, alone);
  const leaving = shareLeavingOut(problem, { groups: needed, money: moneyAlone(problem, alone), lastEnd });
  const lateness = yield* latenessBound(problem, {
    alone,
    groups,
    changeSeconds,
    leftOut: leaving.inLateness,
  });
  const always = new Float64Array(needed.length).fill(Infinity);
  const ask = { groups: needed, hosting };
  const money = yield* changeBound(problem, { ...ask, price: problem.changes.cost });
  const seconds = yield* changeBound(problem, { ...ask, price: Float64Array.from(problem.changes.total) });
  return {
    total:
      impossible(problem, alone) + lateness.orLeftOut + (yield* money.least(leaving.inChanges)) + lastEnd,
    lateness: lateness.ofAll,
    changes: yield* money.least(always),
    changeMinutes: (yield* seconds.least(always)) / 60,
  };
}

/** The bound on a plant of few orders; -Infinity on any other. */
function bestPartition(problem: CompiledProblem, alone: OrdersAlone): PlanBound {
  const { cost, total: seconds } = problem.changes;
  const least = (lateness: boolean, change: Float64Array, leftOut: PartitionAsk["leftOut"]): number =>
    partitionBound(problem, { alone, costs: { lateness, change }, leftOut });
  return {
    total: impossible(problem, alone) + least(true, cost, problem.jobs.unplanned),
    lateness: least(true, new Float64Array(cost.length), null),
    changes: least(false, cost, null),
    changeMinutes: least(false, Float64Array.from(seconds), null) / 60,
  };
}

/** What is known without any work: nothing costs less than nothing. */
export const PLAINEST_BOUND: PlanBound = { total: 0, lateness: 0, changes: 0, changeMinutes: 0 };

/** The work of bounding a compiled problem. */
export function* bounding(problem: CompiledProblem): Work<PlanBound> {
  const alone = yield* ordersAlone(problem);
  yield;
  const any = yield* sumOfParts(problem, alone);
  const few = bestPartition(problem, alone);
  return {
    total: Math.max(any.total, few.total),
    lateness: Math.max(any.lateness, few.lateness),
    changes: Math.max(any.changes, few.changes),
    changeMinutes: Math.max(any.changeMinutes, few.changeMinutes),
  };
}

/** The bound on a compiled problem. */
export function lowerBound(problem: CompiledProblem): PlanBound {
  return finish(bounding(problem));
}

/** The bound of a problem free of faults. */
export function boundOf(data: ProblemData): PlanBound {
  return lowerBound(compile(data));
}
