import { assembleProblem } from "@formweek/application";
import { generatePlant } from "@formweek/demo-plant";
import { solve, type Job, type Plan, type PlannedLot, type ProblemData } from "@formweek/scheduler";
import { hiddenSequences, type HiddenRun } from "./hidden-schedule.ts";
import { seededDraws } from "./seeded-draws.ts";

export interface PlantedSize {
  readonly lines: number;
  readonly orders: number;
  readonly seed: number;
}

/** A problem whose orders were all on time in a schedule that the planner is not told. */
export interface PlantedProblem {
  readonly problem: ProblemData;
  /** The hidden schedule under the same problem, audited. */
  readonly hidden: Plan;
  /** Minutes that lines stand in changes in it. */
  readonly changeMinutes: number;
}

/** Orders are due so many hours after their finish in the hidden schedule at the most. */
const MOST_SLACK_HOURS = 8;

/** Prices of a planner who wants every order on time, whatever the changes cost. */
const ON_TIME_FIRST = { tardinessPerWeightHour: 200, lateOrderPerWeight: 1000 };

/** Minutes that lines stand in changes, their work without pauses. */
export function changeMinutesOf(plan: Plan): number {
  return (plan.objective.terms.find((term) => term.name === "change time")?.amount ?? 0) * 60;
}

/** A plan that says no more than which runs follow one another on each line. */
function planInOrder(runs: readonly (readonly HiddenRun[])[]): Plan {
  const lots = runs.flatMap((line) =>
    line.map(({ job, option }, position): PlannedLot => {
      const at = { start: position, end: position + 1, finish: position + 1 };
      return {
        orderId: job.orderId,
        lot: 0,
        lineId: option.lineId,
        setupId: option.setupId,
        pieces: job.pieces,
        ...at,
      };
    }),
  );
  return { segments: [], lots, unplanned: [], objective: { terms: [], total: 0 } };
}

/** Times given sequences by the planner's own rules, audit included; no search. */
function timed(problem: ProblemData, startFrom: Plan): Plan {
  const result = solve(
    problem,
    { seed: 0, maxSteps: 0, maxMs: null, startFrom },
    { monotonicMs: () => 0, isCancelled: () => false, onProgress: () => undefined },
  );
  if (result.status !== "planned") throw new Error(`The hidden schedule is ${result.status}.`);
  return result.plan;
}

/** The order in one lot: the hidden schedule splits none, and its finish is the one that its due date goes by. */
function wholeJob(job: Job): Job {
  const whole: { -readonly [Key in keyof Job]: Job[Key] } = { ...job };
  delete whole.lots;
  return whole;
}

/**
 * Plants a schedule: a generated plant, campaigns laid out on its lines back to back by rules of thumb and no search, so that
 * the plants stay the same whatever becomes of the engine, timed under every rule; then each order is due 0 to 8 hours after its
 * finish there. Orders that did not find a place are left out of the problem.
 */
export function plantedProblem(size: PlantedSize): PlantedProblem {
  const { plant, orders } = generatePlant(size);
  const { problem } = assembleProblem({ plant, orders, pins: [], now: 0 });
  const random = seededDraws(size.seed);
  const open: ProblemData = {
    ...problem,
    objective: { ...problem.objective, ...ON_TIME_FIRST },
    jobs: problem.jobs.map((job) => wholeJob({ ...job, dueAt: problem.horizon.end, weight: 1 })),
  };
  const sequences = timed(open, planInOrder(hiddenSequences(open, random)));
  const finishes = new Map(sequences.lots.map((lot) => [lot.orderId, lot.finish]));
  const jobs = open.jobs.flatMap((job): Job[] => {
    const finish = finishes.get(job.orderId);
    const slack = Math.round(random() * MOST_SLACK_HOURS * 3600);
    return finish === undefined ? [] : [{ ...job, dueAt: finish + slack }];
  });
  const planted = { ...open, jobs };
  const hidden = timed(planted, sequences);
  if (hidden.lots.length !== jobs.length) throw new Error("The hidden schedule lost an order.");
  return { problem: planted, hidden, changeMinutes: changeMinutesOf(hidden) };
}
