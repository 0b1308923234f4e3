import type { Strategy } from "../improve/search-method.ts";
import type { SolveParams } from "../solve-env.ts";

/** One search of a portfolio: what it draws from and how it goes about it. */
export interface Member {
  readonly seed: number;
  readonly strategy: Strategy;
}

/** By member, in turn. The first is the one that does best alone, so that a portfolio of one loses nothing. */
const STRATEGIES: readonly Strategy[] = [
  { heat: 1, lateStart: 1 },
  { heat: 0.6, lateStart: 1 },
  { heat: 1, lateStart: 3 },
  { heat: 1.6, lateStart: 1 },
];

/** The member of a number, from 0. Each has a seed of its own, the given one and those after it. */
export function memberOf({ seed }: SolveParams, number: number): Member {
  return { seed: seed + number, strategy: STRATEGIES[number % STRATEGIES.length]! };
}

/** Members of the portfolio, at least one. */
export function memberCount({ members }: SolveParams): number {
  return Math.max(1, members ?? 1);
}
