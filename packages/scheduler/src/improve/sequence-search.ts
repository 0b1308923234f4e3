import { exponentialDraws } from "../chance/exact-log.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { emptySequences, insertOption, type Sequences } from "../timing/sequences.ts";
import { allAlwaysFit, linesArePlain } from "./plain-lines.ts";
import type { Search, SearchContext, SearchMethod } from "./search-method.ts";
import { BlockMoves } from "./sequence/block-moves.ts";
import { changesMatter, oneLineOf } from "./sequence/one-line.ts";
import { Population } from "./sequence/population.ts";
import { cross, moveBlock, shuffle } from "./sequence/vary.ts";

const PARENTS = 12;
/** Mean loss that a kick may leave behind, as a share of the child's best money. */
const KICK_LOSS = 0.003;
/** How long the search stays with what it has. */
interface Patience {
  /** Kicks after each crossover before the child is judged. */
  readonly kicksPerChild: number;
  /** Children in a row that are no new member, after which the population begins anew. */
  readonly staleChildren: number;
  /** The new population begins with the best of all. */
  readonly keepsBest: boolean;
}

/** Where changes take time, each child is worth a long search of its own. */
const WITH_CHANGES: Patience = { kicksPerChild: 300, staleChildren: 100, keepsBest: true };
/** Else a descent comes close at once, or ends in a trap that kicks and crossovers of its like do not leave: begin anew soon. */
const WITHOUT_CHANGES: Patience = { kicksPerChild: 20, staleChildren: 10, keepsBest: false };

/**
 * One line, weighted tardiness: a small population of sequences, order crossover, and an iterated local search with block
 * moves for each child (moves after Subramanian et al. 2014 and Liao et al. 2012) that now and then goes on from a slightly
 * dearer sequence. One step is one local search.
 */
class SequenceSearch implements Search {
  readonly stepsPerLook = 1;
  private readonly context: SearchContext;
  private readonly moves: BlockMoves;
  private readonly patience: Patience;
  private readonly n: number;
  private readonly population = new Population(PARENTS);
  private readonly losses = exponentialDraws();
  private readonly bestSequence: Int32Array;
  private bestPaid: number;
  /** Where the child's local search stands, and the best that it has seen. */
  private readonly current: Int32Array;
  private currentMoney = Infinity;
  private readonly child: Int32Array;
  private childMoney = Infinity;
  private readonly trial: Int32Array;
  private kicksLeft = 0;
  private staleChildren = 0;
  private hasBegun = false;

  constructor(context: SearchContext) {
    const { problem, start } = context;
    this.context = context;
    this.n = problem.jobs.count;
    const line = oneLineOf(problem);
    this.moves = new BlockMoves(line);
    this.patience = changesMatter(line) ? WITH_CHANGES : WITHOUT_CHANGES;
    this.bestSequence = this.ordersOf(start);
    this.current = Int32Array.from(this.bestSequence);
    this.child = Int32Array.from(this.bestSequence);
    this.trial = Int32Array.from(this.bestSequence);
    this.moves.load(this.bestSequence);
    this.bestPaid = this.moves.money;
  }

  /** All orders of the problem; those that the sequences leave out come last. */
  private ordersOf(sequences: Sequences): Int32Array {
    const { options } = this.context.problem;
    const row = sequences.at[0]!.subarray(0, sequences.length[0]);
    const orders = Array.from(row, (option) => options.job[option]!);
    const present = new Set(orders);
    for (let order = 0; order < this.n; order++) if (!present.has(order)) orders.push(order);
    return Int32Array.from(orders);
  }

  /** Takes the plan into the population. */
  adopt(elite: Sequences): void {
    const sequence = this.ordersOf(elite);
    this.moves.load(sequence);
    const { money } = this.moves;
    if (this.population.add({ sequence, money })) this.staleChildren = 0;
    if (money >= this.bestPaid) return;
    this.bestPaid = money;
    this.bestSequence.set(sequence);
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
    if (this.kicksLeft === 0) this.beginChild();
    else this.kick();
    if (this.childMoney < this.bestPaid) {
      this.bestPaid = this.childMoney;
      this.bestSequence.set(this.child);
    }
    if (this.kicksLeft === 0) this.settle();
  }

  /** A first child from the given plan, further ones at random, then children of two members. */
  private beginChild(): void {
    const { random } = this.context;
    if (this.population.isFull) {
      const [a, b] = this.population.pair(random.below);
      cross(random, a.sequence, b.sequence, this.trial);
    } else if (this.hasBegun) {
      shuffle(random, this.trial);
    }
    this.hasBegun = true;
    this.kicksLeft = this.patience.kicksPerChild;
    this.moves.load(this.trial);
    this.moves.descend(random.below(this.n));
    this.childMoney = Infinity;
    this.goOnFromHere();
  }

  private kick(): void {
    const { random } = this.context;
    this.trial.set(this.current);
    const { from, to } = moveBlock(random, this.trial);
    this.moves.load(this.trial);
    this.moves.descendNear(from, to);
    this.kicksLeft--;
    const allowed = KICK_LOSS * this.childMoney * this.losses[random.below(this.losses.length)]!;
    if (this.moves.money <= this.currentMoney + allowed) this.goOnFromHere();
  }

  private goOnFromHere(): void {
    this.current.set(this.moves.sequence);
    this.currentMoney = this.moves.money;
    if (this.currentMoney >= this.childMoney) return;
    this.child.set(this.current);
    this.childMoney = this.currentMoney;
  }

  /** Takes the child into the population; starts anew when nothing new comes. */
  private settle(): void {
    if (this.population.add({ sequence: Int32Array.from(this.child), money: this.childMoney })) {
      this.staleChildren = 0;
      return;
    }
    this.staleChildren++;
    if (this.staleChildren < this.patience.staleChildren) return;
    this.staleChildren = 0;
    this.population.clear();
    if (this.patience.keepsBest)
      this.population.add({ sequence: Int32Array.from(this.bestSequence), money: this.bestPaid });
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
  *begin(context) {
    yield;
    return new SequenceSearch(context);
  },
};
