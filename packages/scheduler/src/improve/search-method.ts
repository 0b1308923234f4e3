import type { Random } from "../chance/random.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Decoder } from "../timing/decoder.ts";
import type { Sequences } from "../timing/sequences.ts";
import type { Work } from "../work/work.ts";

/** Settings in which the members of a portfolio differ. */
export interface Strategy {
  /** Annealing's first temperature, as a multiple of what does best alone. */
  readonly heat: number;
  /** Price of lateness at first, where a method lets it grow, as a multiple of what does best alone. */
  readonly lateStart: number;
}

/** What a search starts from. `start` is its own copy; `decoder` may be used at any time. */
export interface SearchContext {
  readonly problem: CompiledProblem;
  readonly decoder: Decoder;
  readonly random: Random;
  readonly start: Sequences;
  readonly strategy: Strategy;
  /** A long step may end early where this holds: nobody will ask for another. */
  readonly isGivenUp: () => boolean;
}

/** One way of improving a plan. A method knows the problem's rules only through decoder and compiled arrays. */
export interface SearchMethod {
  readonly name: string;
  /** True for the problems that the method is made for. */
  readonly supports: (problem: CompiledProblem) => boolean;
  /** A search that has taken in where it starts: on a large plant that takes a while. */
  readonly begin: (context: SearchContext) => Work<Search>;
}

/** A search under way. `best` never gets worse, and its money is that of a full decode. */
export interface Search {
  /** One step of bounded work, a few milliseconds at the most; `share` in 0 … 1 is how much of the budget is gone. */
  readonly step: (share: number) => void;
  /** Goes on from this plan of the problem, which is the best from then on where it is better; keeps no hold of it. */
  readonly adopt: (elite: Sequences) => void;
  readonly best: () => Sequences;
  readonly bestMoney: () => number;
  /** Positions and plans judged so far. */
  readonly evaluations: () => number;
  /** Steps between two looks at the clock: small where steps are long. */
  readonly stepsPerLook: number;
}
