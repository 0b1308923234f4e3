import { addWork, NEVER, nextOpen } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { runEnd } from "../timing/run-timing.ts";
import type { OrdersAlone } from "./orders-alone.ts";

/** What counts in a bound: lateness or not, and what a change costs, [spec]. */
export interface CountedCosts {
  readonly lateness: boolean;
  readonly change: Float64Array;
}

export interface SubsetAsk {
  readonly alone: OrdersAlone;
  /** Orders by bit. */
  readonly jobs: readonly number[];
  readonly costs: CountedCosts;
}

/** Least costs of one line by the set of orders that it makes, in their best order; Infinity where it cannot make them. */
export interface LineSubsets {
  /** [set of orders] without a stripping */
  readonly plain: Float64Array;
  /** [set of orders] with a stripping, be it after the last run */
  readonly stripped: Float64Array;
}

/** A line after some orders, as cheap or as early as can be. */
interface Label {
  readonly time: number;
  readonly cost: number;
  readonly setup: number;
  readonly hasStripped: boolean;
}

/** Earliest end of a run; to begin at once is not always best where a closed line must warm up again. */
function earliestRunEnd(
  problem: CompiledProblem,
  line: number,
  ask: { from: number; work: number; isFixed: boolean },
): number {
  const calendar = problem.lines.runCalendar[line]!;
  let start = nextOpen(calendar, ask.from);
  if (start >= NEVER || (ask.isFixed && start !== ask.from)) return NEVER;
  let best = NEVER;
  while (start < best) {
    best = Math.min(best, runEnd(problem, line, start, ask.work));
    if (ask.isFixed) break;
    const next = calendar.starts.find((opens) => opens > start);
    if (next === undefined) break;
    start = next;
  }
  return best;
}

/** First instant at which a mould that hangs on no other line, or has left it, could be there; s. */
function mouldAt(problem: CompiledProblem, line: number, mould: number): number {
  const { moulds, lines, changes } = problem;
  let earliest = NEVER;
  for (let copy = moulds.firstCopy[mould]!; copy < moulds.firstCopy[mould + 1]!; copy++) {
    const holder = lines.initialCopy.indexOf(copy);
    if (holder < 0 || holder === line) return 0;
    const row =
      (lines.changeClass[holder]! * changes.setupCount + lines.initialSetup[holder]!) * changes.setupCount;
    let dismount = NEVER;
    for (let to = 0; to < changes.setupCount; to++) {
      const spec = changes.matrix[row + to]!;
      if (to !== lines.initialSetup[holder])
        dismount = Math.min(dismount, spec < 0 ? 0 : changes.dismount[spec]!);
    }
    earliest = Math.min(earliest, lines.freeAt[holder]! + dismount + moulds.carrying[mould]!);
  }
  return earliest;
}

class LineLabels {
  private readonly problem: CompiledProblem;
  private readonly line: number;
  private readonly ask: SubsetAsk;
  private readonly labels: Label[][];
  /** [mould] s */
  private readonly mouldAt: readonly number[];

  constructor(problem: CompiledProblem, line: number, ask: SubsetAsk) {
    this.problem = problem;
    this.line = line;
    this.ask = ask;
    this.labels = Array.from({ length: 1 << ask.jobs.length }, () => []);
    this.mouldAt = Array.from({ length: problem.moulds.count }, (_, mould) => mouldAt(problem, line, mould));
  }

  subsets(): LineSubsets {
    const { labels, problem, line } = this;
    const { freeAt, initialSetup } = problem.lines;
    const plain = new Float64Array(labels.length).fill(Infinity);
    const stripped = new Float64Array(labels.length).fill(Infinity);
    this.keep(0, { time: freeAt[line]!, cost: 0, setup: initialSetup[line]!, hasStripped: false });
    labels.forEach((here, set) => {
      // strippings are added to the list that is being gone through
      for (const label of here) {
        const bare = this.strip(label);
        if (bare !== null) this.keep(set, bare);
        if (label.hasStripped) stripped[set] = Math.min(stripped[set]!, label.cost);
        else plain[set] = Math.min(plain[set]!, label.cost);
        this.extend(set, label);
      }
    });
    return { plain, stripped };
  }

  private keep(set: number, label: Label): void {
    const here = this.labels[set]!;
    const beats = (a: Label, b: Label): boolean =>
      a.setup === b.setup && a.hasStripped === b.hasStripped && a.time <= b.time && a.cost <= b.cost;
    if (!here.some((other) => beats(other, label))) here.push(label);
  }

  private spec(from: number, to: number): number {
    const { changes, lines } = this.problem;
    if (from < 0 || from === to) return -1;
    return changes.matrix[
      (lines.changeClass[this.line]! * changes.setupCount + from) * changes.setupCount + to
    ]!;
  }

  private strip(label: Label): Label | null {
    const { setups } = this.problem;
    if (label.setup < 0 || setups.mould[label.setup]! < 0) return null;
    const bare = setups.stripped[label.setup]!;
    const spec = this.spec(label.setup, bare);
    const cost = label.cost + (spec < 0 ? 0 : this.ask.costs.change[spec]!);
    const time = this.changeEnd(spec, label.time, 0);
    return time >= NEVER ? null : { time, cost, setup: bare, hasStripped: true };
  }

  private extend(set: number, label: Label): void {
    const { jobs } = this.ask;
    const { firstOption } = this.problem.jobs;
    jobs.forEach((job, bit) => {
      if ((set & (1 << bit)) !== 0) return;
      for (let option = firstOption[job]!; option < firstOption[job + 1]!; option++) {
        const next = this.run(label, job, option);
        if (next !== null) this.keep(set | (1 << bit), next);
      }
    });
  }

  private run(label: Label, job: number, option: number): Label | null {
    const { problem, line, ask } = this;
    const { jobs, options } = problem;
    const earliestStart = ask.alone.earliestStart[option]!;
    if (options.line[option] !== line || earliestStart >= NEVER) return null;
    const setup = options.setup[option]!;
    const spec = this.spec(label.setup, setup);
    const cost = label.cost + (spec < 0 ? 0 : ask.costs.change[spec]!);
    if (!ask.costs.lateness) return { time: label.time, cost, setup, hasStripped: label.hasStripped };
    const fixed = jobs.fixedStart[job]!;
    const mould = problem.setups.mould[setup]!;
    const held = label.setup < 0 ? -1 : problem.setups.mould[label.setup]!;
    const there = mould < 0 || held === mould ? 0 : this.mouldAt[mould]!;
    const ready = this.changeEnd(spec, Math.max(label.time, options.availableFrom[option]!), there);
    if (fixed >= 0 && ready > fixed) return null;
    const from = fixed >= 0 ? fixed : Math.max(ready, earliestStart);
    const time = earliestRunEnd(problem, line, { from, work: options.seconds[option]!, isFixed: fixed >= 0 });
    if (time >= NEVER) return null;
    const late = time - jobs.due[job]!;
    const lateness = late > 0 ? late * jobs.latePerSecond[job]! + jobs.lateOnce[job]! : 0;
    return { time, cost: cost + lateness, setup, hasStripped: label.hasStripped };
  }

  /** End of a change with every team free and the mould there from an instant on; s or NEVER. */
  private changeEnd(spec: number, from: number, there: number): number {
    if (spec < 0) return Math.max(from, there);
    const { changes, anyTeam, lines } = this.problem;
    const dismounted =
      changes.teamWork[spec] === 0
        ? from
        : addWork(anyTeam, nextOpen(anyTeam, from), changes.dismount[spec]!);
    const tailFrom = addWork(anyTeam, Math.max(dismounted, there), changes.mount[spec]!);
    return tailFrom >= NEVER ? NEVER : addWork(lines.calendar[this.line]!, tailFrom, changes.tail[spec]!);
  }
}

/**
 * The best of every order of runs on a line by itself, for each set of orders, by dynamic programming over sets (after M. Held,
 * R. M. Karp, "A dynamic programming approach to sequencing problems", Journal of SIAM 10, 1962; from memory). Time and cost
 * are weighed as a front of labels. O(2^orders × orders × labels).
 */
export function lineSubsets(problem: CompiledProblem, line: number, ask: SubsetAsk): LineSubsets {
  return new LineLabels(problem, line, ask).subsets();
}
