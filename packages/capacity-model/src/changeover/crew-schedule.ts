/** A task of a change before it has a time. `after` holds keys of tasks that must be done first. */
export interface CrewTask {
  readonly key: string;
  readonly seconds: number;
  /** Takes one setter for its whole length; otherwise it runs beside the crew. */
  readonly byTeam: boolean;
  readonly after: readonly string[];
  /** Taken before every other task that could start then. */
  readonly first: boolean;
}

/** Where a task lies, in seconds from the start of the change. */
export interface PlacedTask<Task extends CrewTask = CrewTask> {
  readonly task: Task;
  readonly startSeconds: number;
  readonly endSeconds: number;
}

/**
 * Shares the mechanical tasks of a change among `setters` people and lets the others run beside them: list scheduling,
 * the task with the longest path behind it first, ties in the given order. Never idles a setter while a task is ready;
 * not always the shortest possible (at most 2 - 1/setters times it). Keys in `after` that are not given are ignored.
 * Result in working order: by start, then in the given order. No task gives an empty list.
 *
 * Source: R. L. Graham, "Bounds on multiprocessing timing anomalies", 1969 (list scheduling and its bound; from memory).
 */
export function scheduleCrew<Task extends CrewTask>(
  tasks: readonly Task[],
  setters: number,
): readonly PlacedTask<Task>[] {
  const pathBehind = longestPaths(tasks);
  const known = new Set(tasks.map((task) => task.key));
  const ends = new Map<string, number>();
  const freeAt = Array.from({ length: Math.max(1, setters) }, () => 0);
  const waiting = new Set(tasks.keys());
  const placed = new Map<number, PlacedTask<Task>>();
  while (waiting.size > 0) {
    const person = indexOfLeast(freeAt);
    const personFree = freeAt[person] as number;
    let best: Candidate | null = null;
    for (const index of waiting) {
      const task = tasks[index] as Task;
      const ready = readyAt(task, known, ends);
      if (ready === null) continue;
      const start = task.byTeam ? Math.max(ready, personFree) : ready;
      const candidate = { index, start, first: task.first, path: pathBehind[index] as number };
      if (best === null || goesBefore(candidate, best)) best = candidate;
    }
    // A ring of tasks that wait for each other has no start: leave it out rather than loop.
    if (best === null) break;
    const task = tasks[best.index] as Task;
    const end = best.start + task.seconds;
    if (task.byTeam) freeAt[person] = end;
    ends.set(task.key, end);
    placed.set(best.index, { task, startSeconds: best.start, endSeconds: end });
    waiting.delete(best.index);
  }
  return [...placed]
    .sort(([i, a], [j, b]) => a.startSeconds - b.startSeconds || i - j)
    .map(([, placement]) => placement);
}

interface Candidate {
  readonly index: number;
  readonly start: number;
  readonly first: boolean;
  readonly path: number;
}

function goesBefore(one: Candidate, other: Candidate): boolean {
  if (one.start !== other.start) return one.start < other.start;
  if (one.first !== other.first) return one.first;
  if (one.path !== other.path) return one.path > other.path;
  return one.index < other.index;
}

function readyAt(
  task: CrewTask,
  known: ReadonlySet<string>,
  ends: ReadonlyMap<string, number>,
): number | null {
  let ready = 0;
  for (const key of task.after) {
    if (!known.has(key)) continue;
    const end = ends.get(key);
    if (end === undefined) return null;
    ready = Math.max(ready, end);
  }
  return ready;
}

function indexOfLeast(values: readonly number[]): number {
  let least = 0;
  for (let index = 1; index < values.length; index += 1) {
    if ((values[index] as number) < (values[least] as number)) least = index;
  }
  return least;
}

/** Seconds of the longest path from a task's start to the end of the change, without regard to the crew. */
function longestPaths(tasks: readonly CrewTask[]): readonly number[] {
  const indexOf = new Map(tasks.map((task, index) => [task.key, index]));
  const paths = tasks.map((task) => task.seconds);
  // Backwards once is enough where tasks stand after those they wait for; a ring of tasks stops after as many rounds as tasks.
  for (let round = 0, moved = true; moved && round < tasks.length; round += 1) {
    moved = false;
    for (let index = tasks.length - 1; index >= 0; index -= 1) {
      for (const key of (tasks[index] as CrewTask).after) {
        const earlier = indexOf.get(key);
        if (earlier === undefined) continue;
        const through = (tasks[earlier] as CrewTask).seconds + (paths[index] as number);
        if (through <= (paths[earlier] as number)) continue;
        paths[earlier] = through;
        moved = true;
      }
    }
  }
  return paths;
}
