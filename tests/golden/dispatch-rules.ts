/** A job of one machine, released at 0. Times in any one unit. */
export interface TextbookJob {
  readonly duration: number;
  readonly due: number;
  readonly weight: number;
}

/** Job numbers from 0 in the order of a key, smallest first; ties by number. */
function orderBy(jobs: readonly TextbookJob[], key: (job: TextbookJob) => number): number[] {
  return jobs.map((_, index) => index).sort((a, b) => key(jobAt(jobs, a)) - key(jobAt(jobs, b)) || a - b);
}

function jobAt(jobs: readonly TextbookJob[], index: number): TextbookJob {
  const job = jobs[index];
  if (job === undefined) throw new Error(`There is no job ${index}.`);
  return job;
}

export const shortestFirst = (jobs: readonly TextbookJob[]) => orderBy(jobs, (job) => job.duration);
export const longestFirst = (jobs: readonly TextbookJob[]) => orderBy(jobs, (job) => -job.duration);
export const earliestDueFirst = (jobs: readonly TextbookJob[]) => orderBy(jobs, (job) => job.due);
export const weightedShortestFirst = (jobs: readonly TextbookJob[]) =>
  orderBy(jobs, (job) => job.duration / job.weight);

/** Set-up before a job: `setup(null, job)` on the empty machine. */
export type Setup = (before: number | null, job: number) => number;

const noSetup: Setup = () => 0;

export interface SequenceFigures {
  readonly totalFlow: number;
  readonly totalTardiness: number;
  readonly weightedCompletion: number;
  readonly weightedTardiness: number;
  readonly lateJobs: number;
  readonly greatestLateness: number;
}

/** What a sequence costs, job after job without idle time. */
export function figuresOf(
  jobs: readonly TextbookJob[],
  sequence: readonly number[],
  setup = noSetup,
): SequenceFigures {
  let time = 0;
  let before: number | null = null;
  const figures = {
    totalFlow: 0,
    totalTardiness: 0,
    weightedCompletion: 0,
    weightedTardiness: 0,
    lateJobs: 0,
  };
  let greatestLateness = -Infinity;
  for (const index of sequence) {
    const job = jobAt(jobs, index);
    time += setup(before, index) + job.duration;
    const tardiness = Math.max(0, time - job.due);
    figures.totalFlow += time;
    figures.totalTardiness += tardiness;
    figures.weightedCompletion += job.weight * time;
    figures.weightedTardiness += job.weight * tardiness;
    figures.lateJobs += tardiness > 0 ? 1 : 0;
    greatestLateness = Math.max(greatestLateness, time - job.due);
    before = index;
  }
  return { ...figures, greatestLateness };
}

/** Moore and Hodgson: fewest late jobs. On-time jobs by due date, then the late ones by number. */
export function fewestLate(jobs: readonly TextbookJob[]): {
  readonly onTime: number[];
  readonly late: number[];
} {
  const onTime: number[] = [];
  const late: number[] = [];
  let time = 0;
  for (const index of earliestDueFirst(jobs)) {
    onTime.push(index);
    time += jobAt(jobs, index).duration;
    if (time <= jobAt(jobs, index).due) continue;
    const longest = onTime.reduce((a, b) => (jobAt(jobs, b).duration > jobAt(jobs, a).duration ? b : a));
    onTime.splice(onTime.indexOf(longest), 1);
    late.push(longest);
    time -= jobAt(jobs, longest).duration;
  }
  return { onTime, late: late.sort((a, b) => a - b) };
}

/** Johnson: least makespan on two machines in a row. */
export function johnson(jobs: readonly (readonly [first: number, second: number])[]): number[] {
  const numbered = jobs.map(([first, second], index) => ({ first, second, index }));
  const front = numbered.filter((job) => job.first < job.second).sort((a, b) => a.first - b.first);
  const back = numbered.filter((job) => job.first >= job.second).sort((a, b) => b.second - a.second);
  return [...front, ...back].map((job) => job.index);
}

export function flowShopMakespan(
  jobs: readonly (readonly [number, number])[],
  sequence: readonly number[],
): number {
  let first = 0;
  let second = 0;
  for (const index of sequence) {
    const [a, b] = jobs[index] ?? [NaN, NaN];
    first += a;
    second = Math.max(first, second) + b;
  }
  return second;
}

/** Greatest load when jobs go, longest first, each to the machine that is free first. */
export function longestFirstMakespan(durations: readonly number[], machines: number): number {
  const loads = Array.from({ length: machines }, () => 0);
  for (const duration of [...durations].sort((a, b) => b - a)) {
    const least = loads.indexOf(Math.min(...loads));
    loads[least] = (loads[least] ?? 0) + duration;
  }
  return Math.max(...loads);
}

/** Apparent tardiness cost with set-ups; `scale` in units of mean duration and mean set-up, no set-up part when it is null. */
export interface AtcsScale {
  readonly dueScale: number;
  readonly meanDuration: number;
  readonly setup: { readonly scale: number; readonly mean: number } | null;
}

export function atcsIndex(
  job: TextbookJob,
  at: { readonly time: number; readonly setup: number },
  { dueScale, meanDuration, setup }: AtcsScale,
): number {
  const slack = Math.max(0, job.due - job.duration - at.time);
  const wait = setup === null ? 1 : Math.exp(-at.setup / (setup.scale * setup.mean));
  return (job.weight / job.duration) * Math.exp(-slack / (dueScale * meanDuration)) * wait;
}

/** Dispatch by the index: whenever the machine is free, the job with the greatest one; ties by number. */
export function atcsSequence(jobs: readonly TextbookJob[], scale: AtcsScale, setup = noSetup): number[] {
  const left = jobs.map((_, index) => index);
  const sequence: number[] = [];
  let time = 0;
  while (left.length > 0) {
    const before = sequence[sequence.length - 1] ?? null;
    const indexOf = (job: number) => atcsIndex(jobAt(jobs, job), { time, setup: setup(before, job) }, scale);
    const next = left.reduce((a, b) => (indexOf(b) > indexOf(a) ? b : a));
    left.splice(left.indexOf(next), 1);
    sequence.push(next);
    time += setup(before, next) + jobAt(jobs, next).duration;
  }
  return sequence;
}

/** Every order of the numbers 0 … n - 1. */
export function permutations(n: number): number[][] {
  if (n === 0) return [[]];
  return permutations(n - 1).flatMap((order) =>
    Array.from({ length: n }, (_, place) => [...order.slice(0, place), n - 1, ...order.slice(place)]),
  );
}
