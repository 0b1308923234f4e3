import type { SolveParams } from "../solve-env.ts";
import { memberCount } from "./member.ts";

/** One round: what every member does between two exchanges. Plain data. */
export interface Round {
  /** Steps of each member, from its beginning on, when the round ends; null: by time alone. */
  readonly toStep: number | null;
  /** Time from the round's start to its end, ms, shared by the members of a thread unless steps end it; null: by steps (or a cancel) alone. */
  readonly ms: number | null;
  /** Share of the budget at both ends. */
  readonly fromShare: number;
  readonly toShare: number;
}

/** Rounds of a portfolio: often enough to pass a plan on, seldom enough for the members to go ways of their own. */
const ROUNDS = 24;

/** A search alone has nobody to exchange with. */
export function roundCount(params: SolveParams): number {
  return memberCount(params) === 1 ? 1 : ROUNDS;
}

/** The round of a number, from 0, that begins `elapsedMs` after the portfolio began. */
export function roundAt(params: SolveParams, number: number, elapsedMs: number): Round {
  const { maxSteps, maxMs } = params;
  const rounds = roundCount(params);
  const left = maxMs === null ? null : Math.max(0, maxMs - elapsedMs);
  if (maxSteps !== null) {
    return {
      toStep: Math.floor((maxSteps * (number + 1)) / rounds),
      ms: left,
      fromShare: number / rounds,
      toShare: (number + 1) / rounds,
    };
  }
  // what came before the first round is part of the budget
  const gone = maxMs === null ? 0 : Math.min(1, elapsedMs / Math.max(1, maxMs));
  return {
    toStep: null,
    ms: left === null ? null : left / (rounds - number),
    fromShare: gone,
    toShare: gone + (1 - gone) / (rounds - number),
  };
}
