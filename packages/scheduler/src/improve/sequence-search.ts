import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { emptySequences, insertOption, type Sequences } from "../timing/sequences.ts";
import { allAlwaysFit, linesArePlain } from "./plain-lines.ts";
import type { Search, SearchContext, SearchMethod } from "./search-method.ts";
import { BlockMoves } from "./sequence/block-moves.ts";
import { oneLineOf } from "./sequence/one-line.ts";

const PARENTS = 12;
/** Kicks after each crossover before the child is judged. */
const KICKS_PER_CHILD = 12;
/** Orders in a block that a kick moves, and how far at the most. */
const LONGEST_KICK = 6;
const KICK_REACH = 12;
/** Children without a new member after which all but the best begin anew. */
const STALE_CHILDREN = 60;

interface Member {
  readonly sequence: Int32Array;
  readonly money: number;
}

/**
 * One line, weighted tardiness: a small population of sequences, order crossover, and an iterated local search with block
 * moves for each child (moves after Subramanian et al. 2014 and Liao et al. 2012). One step is one local search.
 */
class SequenceSearch implements Search {
  readonly stepsPerLook = 1;
  private readonly context: SearchContext;
  private readonly moves: BlockMoves;
  private readonly n: number;
  private readonly members: Member[] = [];
  private readonly bestSequence: Int32Array;
  private bestPaid = Infinity;
  private child: Int32Array;
  private childMoney = Infinity;
  private kicksLeft = 0;
  private staleChildren = 0;
  private readonly trial: Int32Array;

  constructor(context: SearchContext) {
    const { problem, start } = context;
    this.context = context;
    this.n = problem.jobs.count;
    this.moves = new BlockMoves(oneLineOf(problem));
    const row = start.at[0]!;
    this.bestSequence = this.complete(
      Array.from(row.subarray(0, start.length[0]), (option) => problem.options.job[option]!),
    );
    this.child = Int32Array.from(this.bestSequence);
    this.trial = new Int32Array(this.n);
    this.moves.load(this.bestSequence);
    this.bestPaid = this.moves.money;
  }

  /** Orders that construction left out are put at the end. */
  private complete(orders: number[]): Int32Array {
    const present = new Set(orders);
    for (let order = 0; order < this.n; order++) if (!present.has(order)) orders.push(order);
    return Int32Array.from(orders);
  }

  best(): Sequences {
    const { problem } = this.context;
    const sequences = emptySequences(problem);
    this.bestSequence.forEach((order, p) => {
      insertOption(sequences, 0, p, problem.jobs.firstOption[order]!);
    });
    return sequences;
  }

  bestMoney(): number {
    return this.bestPaid;
  }

  evaluations(): number {
    return this.moves.evaluations;
  }

  step(): void {
    if (this.n === 0) return;
    const { random } = this.context;
    if (this.kicksLeft === 0) this.beginChild();
    else this.kick();
    this.moves.load(this.trial);
    this.moves.descend(random.below(this.n));
    this.kicksLeft--;
    if (this.moves.money <= this.childMoney) {
      this.childMoney = this.moves.money;
      this.child.set(this.moves.sequence);
    }
    if (this.childMoney < this.bestPaid) {
      this.bestPaid = this.childMoney;
      this.bestSequence.set(this.child);
    }
    if (this.kicksLeft === 0) this.settle();
  }

  /** A first member from the constructed plan, further ones at random, then children of two members. */
  private beginChild(): void {
    const { random } = this.context;
    this.kicksLeft = KICKS_PER_CHILD;
    this.childMoney = Infinity;
    if (this.members.length === 0) this.trial.set(this.bestSequence);
    else if (this.members.length < PARENTS) this.shuffle();
    else {
      const a = random.below(PARENTS);
      const b = (a + 1 + random.below(PARENTS - 1)) % PARENTS;
      this.cross(this.members[a]!.sequence, this.members[b]!.sequence);
    }
  }

  private shuffle(): void {
    const { random } = this.context;
    this.trial.set(this.bestSequence);
    for (let p = this.n - 1; p > 0; p--) this.swap(p, random.below(p + 1));
  }

  private swap(p: number, q: number): void {
    const order = this.trial[p]!;
    this.trial[p] = this.trial[q]!;
    this.trial[q] = order;
  }

  /** Order crossover: a stretch of one parent stays in place, the rest follows the other's order. */
  private cross(a: Int32Array, b: Int32Array): void {
    const { random } = this.context;
    const { n, trial } = this;
    const from = random.below(n);
    const size = 1 + random.below(Math.max(1, n - 1));
    const kept = new Uint8Array(n);
    for (let i = 0; i < size; i++) {
      const p = (from + i) % n;
      trial[p] = a[p]!;
      kept[a[p]!] = 1;
    }
    let p = (from + size) % n;
    for (let i = 0; i < n; i++) {
      const order = b[i]!;
      if (kept[order] === 1) continue;
      trial[p] = order;
      p = (p + 1) % n;
    }
  }

  /** Moves one or two random blocks of the child. */
  private kick(): void {
    const { random } = this.context;
    const { n, trial } = this;
    trial.set(this.child);
    for (let times = 1 + random.below(2); times > 0; times--) {
      const size = 1 + random.below(Math.min(n - 1, LONGEST_KICK));
      const from = random.below(n - size + 1);
      const block = trial.slice(from, from + size);
      trial.copyWithin(from, from + size);
      const to = Math.max(0, Math.min(n - size, from - KICK_REACH + random.below(2 * KICK_REACH + 1)));
      trial.copyWithin(to + size, to, n - size);
      trial.set(block, to);
    }
  }

  /** Takes the child into the population unless its money is there already; starts anew when nothing new comes. */
  private settle(): void {
    const { members } = this;
    const known = members.some(({ money }) => Math.abs(money - this.childMoney) < 1e-6);
    const worst = members.reduce((w, member, i) => (member.money > members[w]!.money ? i : w), 0);
    const member = { sequence: Int32Array.from(this.child), money: this.childMoney };
    if (members.length < PARENTS) {
      if (known && this.staleChildren < PARENTS) this.staleChildren++;
      else members.push(member);
      return;
    }
    if (!known && this.childMoney < members[worst]!.money) {
      members[worst] = member;
      this.staleChildren = 0;
      return;
    }
    if (++this.staleChildren < STALE_CHILDREN) return;
    members.length = 0;
    this.staleChildren = 0;
    members.push({ sequence: Int32Array.from(this.bestSequence), money: this.bestPaid });
  }
}

function supports(problem: CompiledProblem): boolean {
  const { jobs, lines, options } = problem;
  if (lines.count !== 1 || problem.makespanPrice > 0 || jobs.count > 400 || jobs.count < 2) return false;
  if (jobs.release.some((release) => release > 0) || options.availableFrom.some((from) => from > 0))
    return false;
  return linesArePlain(problem) && !jobs.lateOnce.some((money) => money > 0) && allAlwaysFit(problem);
}

export const sequenceSearch: SearchMethod = {
  name: "sequences of one line",
  supports,
  begin: (context) => new SequenceSearch(context),
};
