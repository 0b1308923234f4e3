import type { StopReason } from "../result.ts";
import type { SolveParams } from "../solve-env.ts";
import type { Sequences } from "../timing/sequences.ts";
import { exchange } from "./exchange.ts";
import { memberCount } from "./member.ts";
import { roundAt, roundCount, type Round } from "./round.ts";

/** Where a member stands at the end of a round. Plain data. */
export interface Standing {
  readonly member: number;
  readonly money: number;
  /** Its best plan; of the same problem in every thread. */
  readonly elite: Sequences;
  readonly steps: number;
  readonly evaluations: number;
  readonly ended: StopReason;
}

/** A plan that a member takes over before it goes on. Plain data. */
export interface Adoption {
  readonly member: number;
  readonly elite: Sequences;
}

/** Whose best plan is the portfolio's, and what all members did together. */
export interface Winner {
  readonly member: number;
  readonly stopped: StopReason;
  readonly steps: number;
  readonly evaluations: number;
}

export type NextMove =
  | { readonly kind: "round"; readonly round: Round; readonly adoptions: readonly Adoption[] }
  | { readonly kind: "finish"; readonly winner: Winner };

/**
 * The course of a portfolio: round after round until the budget is spent, then the cheapest plan, ties to the lower member.
 * Whoever carries the members, one thread or several, asks it what comes next, so that the plan of a step budget is a function
 * of problem, seed, steps and number of members.
 */
export class PortfolioCourse {
  private readonly params: SolveParams;
  private done = 0;

  constructor(params: SolveParams) {
    this.params = params;
  }

  first(elapsedMs: number): NextMove {
    return this.round(elapsedMs, []);
  }

  /** After a round: the standings of all members, in any order. */
  next(standings: readonly Standing[], elapsedMs: number): NextMove {
    const ranked = [...standings].sort((a, b) => a.member - b.member);
    this.done++;
    const stopped = this.stopOf(ranked);
    if (stopped !== null) return { kind: "finish", winner: winnerOf(ranked, stopped) };
    const takes = exchange(ranked.map(({ money }) => money));
    const adoptions = takes.flatMap((from, member) =>
      from === null ? [] : [{ member, elite: ranked[from]!.elite }],
    );
    return this.round(elapsedMs, adoptions);
  }

  private round(elapsedMs: number, adoptions: readonly Adoption[]): NextMove {
    return { kind: "round", round: roundAt(this.params, this.done, elapsedMs), adoptions };
  }

  private stopOf(standings: readonly Standing[]): StopReason | null {
    const any = (reason: StopReason): boolean => standings.some(({ ended }) => ended === reason);
    if (any("cancelled")) return "cancelled";
    if (any("optimal")) return "optimal";
    if (this.params.maxSteps !== null && any("time")) return "time";
    if (this.done < roundCount(this.params)) return null;
    return this.params.maxSteps === null ? "time" : "steps";
  }
}

function winnerOf(standings: readonly Standing[], stopped: StopReason): Winner {
  const best = standings.reduce((least, each) => (each.money < least.money ? each : least));
  const sum = (of: (standing: Standing) => number): number =>
    standings.reduce((total, standing) => total + of(standing), 0);
  return {
    member: best.member,
    stopped,
    steps: sum(({ steps }) => steps),
    evaluations: sum(({ evaluations }) => evaluations),
  };
}

/** Numbers of all members of the portfolio. */
export function membersOf(params: SolveParams): readonly number[] {
  return Array.from({ length: memberCount(params) }, (_, member) => member);
}
