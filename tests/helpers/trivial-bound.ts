import { addWorking } from "@formweek/capacity-model";
import type { Job, ProblemData, ProblemLine } from "@formweek/scheduler";

/** Money of an order that has the plant to itself, by its largest lot, changes not counted; Infinity where no line can ever end it. */
function moneyAlone(problem: ProblemData, job: Job): number {
  const { tardinessPerWeightHour, lateOrderPerWeight } = problem.objective;
  const ends = job.options.map((option) => {
    const line = problem.lines.find(({ id }) => id === option.lineId) as ProblemLine;
    const from = Math.max(
      problem.horizon.start,
      line.freeAt,
      job.earliestStartAt,
      option.availableFromAt ?? 0,
    );
    const pieces = Math.ceil(job.pieces / (job.lots?.most ?? 1));
    const seconds = Math.ceil(pieces * option.secondsPerPiece - 1e-9);
    const end = addWorking(line.workingTime, from, seconds);
    return end === null || end > problem.horizon.end ? Infinity : end;
  });
  const late = Math.min(Infinity, ...ends) + job.conditioningSeconds - job.dueAt;
  if (late === Infinity) return Infinity;
  return late > 0 ? (job.weight * late * tardinessPerWeightHour) / 3600 + job.weight * lateOrderPerWeight : 0;
}

/** Cheapest change into a set-up from another one, on any line; 0 where a line holds it from the start. */
function leastInto(problem: ProblemData, setupId: string): number {
  const { changePerMachineHour, changePerTeamHour, scrapPerKg } = problem.objective;
  if (problem.lines.some(({ initial }) => initial?.setupId === setupId)) return 0;
  const to = problem.setups.findIndex(({ id }) => id === setupId);
  const costs = problem.changeClasses.flatMap(({ matrix }) =>
    matrix.flatMap((row, from) => {
      if (from === to) return [];
      const spec = problem.changes[row[to] ?? -1];
      if (spec === undefined) return [0];
      const team = spec.dismountSeconds + spec.mountSeconds;
      return [
        ((team + spec.tailSeconds) * changePerMachineHour + team * changePerTeamHour) / 3600 +
          spec.scrapKg * scrapPerKg,
      ];
    }),
  );
  return Math.min(Infinity, ...costs);
}

/**
 * The plainest bound that holds: each order alone or left out, and one cheapest change into each set-up that some order cannot
 * do without; each line without a set-up at the start saves one.
 */
export function trivialBound(problem: ProblemData): number {
  const { unplannedPerWeight } = problem.objective;
  let money = 0;
  const groups = new Map<string, { planned: number; leftOut: number }>();
  for (const job of problem.jobs) {
    const leftOut = job.weight * unplannedPerWeight;
    const least = Math.min(moneyAlone(problem, job), leftOut);
    money += least;
    const setups = new Set(job.options.map(({ setupId }) => setupId));
    const [only] = setups;
    if (setups.size !== 1 || only === undefined) continue;
    const group = groups.get(only) ?? { planned: 0, leftOut: 0 };
    groups.set(only, { planned: group.planned + least, leftOut: group.leftOut + leftOut });
  }
  const extras = [...groups].map(([setup, { planned, leftOut }]) =>
    Math.min(leastInto(problem, setup), leftOut - planned),
  );
  const free = problem.lines.filter(({ initial }) => initial === null).length;
  return extras
    .sort((a, b) => b - a)
    .slice(free)
    .reduce((sum, extra) => sum + extra, money);
}
