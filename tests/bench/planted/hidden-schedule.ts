import type { Job, JobOption, ProblemData } from "@formweek/scheduler";

export interface HiddenRun {
  readonly job: Job;
  readonly option: JobOption;
}

/** Orders of one mould that run on one line one after another. */
interface Campaign {
  readonly lineId: string;
  readonly runs: readonly HiddenRun[];
}

/** Share of the campaigns that come in two visits, so that the hidden schedule is not the one with the fewest changes. */
const TWO_VISITS = 0.1;

/** Seconds that lines stand in the change between two set-ups; 0 where none is needed or nothing is known to be mounted. */
function changeSeconds(problem: ProblemData, lineId: string, from: string | null, to: string): number {
  const line = problem.lines.find((each) => each.id === lineId);
  const matrix = problem.changeClasses.find((each) => each.id === line?.changeClassId)?.matrix;
  const indexOf = (id: string): number => problem.setups.findIndex((setup) => setup.id === id);
  const spec = from === null ? -1 : (matrix?.[indexOf(from)]?.[indexOf(to)] ?? -1);
  const change = problem.changes[spec];
  return change === undefined ? 0 : change.dismountSeconds + change.mountSeconds + change.tailSeconds;
}

const secondsOf = ({ job, option }: HiddenRun): number => Math.ceil(job.pieces * option.secondsPerPiece);
const mouldOf = (problem: ProblemData, option: JobOption): string | null =>
  problem.setups.find((setup) => setup.id === option.setupId)?.mouldId ?? null;

/** Orders by the mould of their first option. */
function ordersByMould(problem: ProblemData): Map<string, Job[]> {
  const groups = new Map<string, Job[]>();
  for (const job of problem.jobs) {
    const [first] = job.options;
    const mould = first === undefined ? null : mouldOf(problem, first);
    if (mould === null) continue;
    const group = groups.get(mould);
    if (group === undefined) groups.set(mould, [job]);
    else group.push(job);
  }
  return groups;
}

/**
 * Each mould gets as many homes as it has copies, the lines least loaded so far among those that may run it; its orders go to
 * the home with the least work. Large moulds choose first.
 */
function homes(problem: ProblemData): Campaign[] {
  const load = new Map<string, number>(problem.lines.map((line) => [line.id, 0]));
  const loadOf = (lineId: string): number => load.get(lineId) ?? 0;
  const byWork = [...ordersByMould(problem)]
    .map(([mould, jobs]) => ({ mould, jobs, pieces: jobs.reduce((sum, job) => sum + job.pieces, 0) }))
    .sort((a, b) => b.pieces - a.pieces || (a.mould < b.mould ? -1 : 1));
  return byWork.flatMap(({ mould, jobs }) => {
    const copies = problem.moulds.find((each) => each.id === mould)?.copies ?? 1;
    const may = [...new Set(jobs.flatMap((job) => job.options.map((option) => option.lineId)))]
      .filter((lineId) => jobs.every((job) => job.options.some((option) => option.lineId === lineId)))
      .sort((a, b) => loadOf(a) - loadOf(b) || (a < b ? -1 : 1))
      .slice(0, copies);
    const runs = new Map<string, HiddenRun[]>(may.map((lineId) => [lineId, []]));
    for (const job of jobs) {
      const [lineId] = [...may].sort((a, b) => loadOf(a) - loadOf(b) || (a < b ? -1 : 1));
      const option = job.options.find((each) => each.lineId === lineId && mouldOf(problem, each) === mould);
      if (lineId === undefined || option === undefined) continue;
      const run = { job, option };
      runs.get(lineId)?.push(run);
      load.set(lineId, loadOf(lineId) + secondsOf(run));
    }
    return [...runs].map(([lineId, own]) => ({ lineId, runs: own }));
  });
}

type Change<T> = (from: T | null, to: T) => number;

/** Seconds of all changes of a row. */
function secondsOfRow<T>(row: readonly T[], change: Change<T>): number {
  return row.reduce((sum, item, index) => sum + change(row[index - 1] ?? null, item), 0);
}

/** Moves single items while that saves changes: what nearest-next leaves for last is often dear. */
function withMoves<T>(items: readonly T[], change: Change<T>): T[] {
  let row = [...items];
  let seconds = secondsOfRow(row, change);
  for (let from = 0; from < row.length; from++) {
    for (let to = 0; to < row.length; to++) {
      const moved = row.toSpliced(from, 1).toSpliced(to, 0, row[from]!);
      const then = secondsOfRow(moved, change);
      if (then >= seconds) continue;
      [row, seconds] = [moved, then];
      [from, to] = [0, -1];
    }
  }
  return row;
}

/** What comes next is what is changed to soonest; then single items move while that saves changes. */
function inOrder<T>(items: readonly T[], change: Change<T>): T[] {
  const left = [...items];
  const ordered: T[] = [];
  while (left.length > 0) {
    const before = ordered.at(-1) ?? null;
    let best = 0;
    let least = Infinity;
    left.forEach((item, index) => {
      const seconds = change(before, item);
      if (seconds >= least) return;
      least = seconds;
      best = index;
    });
    ordered.push(...left.splice(best, 1));
  }
  return withMoves(ordered, change);
}

/** Cuts some campaigns in two; the second visits come after all first ones. */
function visits(campaigns: readonly Campaign[], random: () => number): readonly [Campaign[], Campaign[]] {
  const first: Campaign[] = [];
  const second: Campaign[] = [];
  for (const { lineId, runs } of campaigns) {
    const cut = runs.length >= 4 && random() < TWO_VISITS ? Math.floor(runs.length / 2) : runs.length;
    first.push({ lineId, runs: runs.slice(0, cut) });
    if (cut < runs.length) second.push({ lineId, runs: runs.slice(cut) });
  }
  return [first, second];
}

/**
 * A good schedule by a planner's own rules of thumb: one home a mould copy, campaigns of one mould, changes in an order that no
 * move of a single campaign makes shorter. Runs of each line in their order.
 */
export function hiddenSequences(problem: ProblemData, random: () => number): HiddenRun[][] {
  const campaigns = homes(problem);
  return problem.lines.map((line) => {
    const own = campaigns.filter((campaign) => campaign.lineId === line.id && campaign.runs.length > 0);
    let held = line.initial?.setupId ?? null;
    const row: HiddenRun[] = [];
    for (const round of visits(own, random)) {
      const setupOf = (runs: readonly HiddenRun[], last: boolean): string | null =>
        runs.at(last ? -1 : 0)?.option.setupId ?? null;
      const change = (from: string | null, to: string | null): number =>
        to === null ? 0 : changeSeconds(problem, line.id, from, to);
      const sorted = round.map(({ runs }) =>
        inOrder(runs, (a, b) => change(a === null ? held : a.option.setupId, b.option.setupId)),
      );
      const ordered = inOrder(sorted, (a, b) =>
        change(a === null ? held : setupOf(a, true), setupOf(b, false)),
      );
      for (const runs of ordered) row.push(...runs);
      held = row.at(-1)?.option.setupId ?? held;
    }
    return row;
  });
}
