import { NEVER } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { lineSubsets, type CountedCosts, type LineSubsets } from "./line-subsets.ts";
import type { OrdersAlone } from "./orders-alone.ts";

/** More ways than this to share orders among lines are not gone through. */
const MOST_PARTITIONS = 40_000;
const MOST_ORDERS = 10;

export interface PartitionAsk {
  readonly alone: OrdersAlone;
  readonly costs: CountedCosts;
  /** [job] cost of leaving it out; null where no order may be */
  readonly leftOut: Float64Array | null;
}

/** Moulds of a line's orders. */
interface LineUse {
  readonly moulds: readonly Set<number>[];
}

/** [job][line] moulds that it may need there; none where it cannot run. */
function mouldsByLine(problem: CompiledProblem, alone: OrdersAlone, job: number): LineUse {
  const { jobs, options, setups, lines } = problem;
  const moulds = Array.from({ length: lines.count }, () => new Set<number>());
  for (let option = jobs.firstOption[job]!; option < jobs.firstOption[job + 1]!; option++) {
    if (alone.earliestStart[option]! < NEVER)
      moulds[options.line[option]!]!.add(setups.mould[options.setup[option]!]!);
  }
  return { moulds };
}

class Partitions {
  least = Infinity;
  private readonly problem: CompiledProblem;
  private readonly ask: PartitionAsk;
  private readonly jobs: readonly number[];
  private readonly uses: readonly LineUse[];
  private readonly byLine: readonly LineSubsets[];
  /** [line] orders that it makes */
  private readonly sets: Int32Array;

  constructor(problem: CompiledProblem, ask: PartitionAsk, jobs: readonly number[]) {
    this.problem = problem;
    this.ask = ask;
    this.jobs = jobs;
    this.uses = jobs.map((job) => mouldsByLine(problem, ask.alone, job));
    const { alone, costs } = ask;
    this.byLine = Array.from({ length: problem.lines.count }, (_, line) =>
      lineSubsets(problem, line, { alone, jobs, costs }),
    );
    this.sets = new Int32Array(problem.lines.count);
  }

  /** Ways to share the orders among the lines. */
  count(): number {
    return this.uses.reduce(
      (product, { moulds }) =>
        product * (moulds.filter(({ size }) => size > 0).length + (this.ask.leftOut === null ? 0 : 1)),
      1,
    );
  }

  explore(bit: number, leftOut: number): void {
    if (bit === this.jobs.length) {
      this.least = Math.min(this.least, leftOut + this.cost());
      return;
    }
    this.uses[bit]!.moulds.forEach(({ size }, line) => {
      if (size === 0) return;
      this.sets[line]! |= 1 << bit;
      this.explore(bit + 1, leftOut);
      this.sets[line]! &= ~(1 << bit);
    });
    const price = this.ask.leftOut?.[this.jobs[bit]!] ?? Infinity;
    if (leftOut + price < this.least) this.explore(bit + 1, leftOut + price);
  }

  /** The lines by themselves, and strippings that moulds cannot do without to get from line to line. */
  private cost(): number {
    let sum = 0;
    for (let line = 0; line < this.sets.length; line++) {
      const { plain, stripped } = this.byLine[line]!;
      const set = this.sets[line]!;
      sum += Math.min(plain[set]!, stripped[set]!);
      if (sum >= this.least) return Infinity;
    }
    for (let mould = 0; mould < this.problem.moulds.count; mould++) sum += this.strippingFor(mould);
    return sum;
  }

  /**
   * A copy that serves two lines must leave one. A line that makes anything with another mould, or without one, may let it go in
   * a change that it has anyway; if those do not suffice, one of the rest is stripped.
   */
  private strippingFor(mould: number): number {
    const { moulds, lines } = this.problem;
    let hosts = 0;
    let mixed = 0;
    let extra = Infinity;
    for (let line = 0; line < this.sets.length; line++) {
      const copy = lines.initialCopy[line]!;
      let hostsIt = copy >= 0 && moulds.mouldOfCopy[copy] === mould;
      let isMixed = false;
      const set = this.sets[line]!;
      for (let bit = 0; bit < this.jobs.length; bit++) {
        if ((set & (1 << bit)) === 0) continue;
        const needed = this.uses[bit]!.moulds[line]!;
        if (!needed.has(mould)) isMixed = true;
        else if (needed.size === 1) hostsIt = true;
        else isMixed = true;
      }
      if (!hostsIt) continue;
      hosts++;
      if (isMixed) mixed++;
      else extra = Math.min(extra, this.strippingExtra(line, set));
    }
    const copies = moulds.firstCopy[mould + 1]! - moulds.firstCopy[mould]!;
    return hosts - copies > mixed ? extra : 0;
  }

  private strippingExtra(line: number, set: number): number {
    const { plain, stripped } = this.byLine[line]!;
    return Math.max(0, stripped[set]! - plain[set]!);
  }
}

/**
 * A bound for small plants: the best way to share the orders among the lines, where each line has setters and moulds to
 * itself. -Infinity where there are too many ways, or where orders may be split: a lot elsewhere may shorten a line's changes.
 */
export function partitionBound(problem: CompiledProblem, ask: PartitionAsk): number {
  if (problem.lots.count > problem.jobs.count) return -Infinity;
  const jobs = Array.from(ask.alone.earliestEnd.keys()).filter((job) => ask.alone.earliestEnd[job]! < NEVER);
  if (jobs.length > MOST_ORDERS) return -Infinity;
  const partitions = new Partitions(problem, ask, jobs);
  if (partitions.count() > MOST_PARTITIONS) return -Infinity;
  partitions.explore(0, 0);
  return partitions.least;
}
