import { createRandom } from "../chance/random.ts";
import { chooseMethod } from "../improve/choose-method.ts";
import type { Search } from "../improve/search-method.ts";
import type { StopReason } from "../result.ts";
import type { SolveEnv, SolveParams } from "../solve-env.ts";
import { Decoder } from "../timing/decoder.ts";
import { cloneSequences, type Sequences } from "../timing/sequences.ts";
import type { Member } from "./member.ts";
import type { Prepared } from "./prepare.ts";
import { finish, finishUnless, type Work } from "../work/work.ts";

/** How far a search goes on before it hands back control. */
export interface Stretch {
  /** Steps from its beginning on when it ends; null: by the clock alone. */
  readonly toStep: number | null;
  /** Clock, ms; no end: by steps (or a cancel) alone. */
  readonly fromMs: number;
  readonly toMs: number | null;
  /** Share of the budget that is gone at both ends; used where the clock alone measures it. */
  readonly fromShare: number;
  readonly toShare: number;
}

/** Share by which sums of many terms may differ in their last digits. */
const ROUNDING = 1e-9;

/**
 * One member's search, driven from outside stretch by stretch. The clock decides only when to stop and, without a step
 * budget, how far the budget is spent; with a step budget alone every choice is a function of seed, steps and adopted plans.
 */
export class SearchSession {
  steps = 0;
  /** Begun only when it is asked to go on: it takes a while, and a cancel may come before. */
  private begun: Search | null = null;
  private readonly prepared: Prepared;
  private readonly member: Member;
  private readonly maxSteps: number | null;
  private readonly env: SolveEnv;

  constructor(prepared: Prepared, member: Member, params: SolveParams, env: SolveEnv) {
    this.prepared = prepared;
    this.member = member;
    this.maxSteps = params.maxSteps;
    this.env = env;
  }

  private *beginning(): Work<Search> {
    if (this.begun !== null) return this.begun;
    const { problem, start } = this.prepared;
    this.begun = yield* chooseMethod(problem).begin({
      problem,
      decoder: new Decoder(problem, false),
      random: createRandom(this.member.seed),
      start: cloneSequences(start),
      strategy: this.member.strategy,
      isGivenUp: this.env.isCancelled,
    });
    return this.begun;
  }

  bestMoney(): number {
    return this.begun?.bestMoney() ?? this.prepared.firstTotal;
  }

  evaluations(): number {
    return this.begun?.evaluations() ?? 0;
  }

  /** A copy of the best plan so far. */
  elite(): Sequences {
    return cloneSequences(this.begun?.best() ?? this.prepared.start);
  }

  /** Goes on from another member's plan. */
  adopt(elite: Sequences): void {
    finish(this.beginning()).adopt(elite);
  }

  /** Searches to the end of the stretch, or until it is cancelled or has a plan that none can beat. `onLook` is told the share. */
  advance(stretch: Stretch, onLook: (nowMs: number, share: number) => void): StopReason {
    const { env, maxSteps } = this;
    const search = finishUnless(env.isCancelled, this.beginning());
    if (search === null) return "cancelled";
    const { toStep, fromMs, toMs, fromShare, toShare } = stretch;
    let share = fromShare;
    for (;;) {
      if (this.steps % search.stepsPerLook === 0) {
        const now = env.monotonicMs();
        if (env.isCancelled()) return "cancelled";
        if (this.isOptimal()) return "optimal";
        if (toMs !== null && now >= toMs) return "time";
        if (toMs !== null && toStep === null)
          share = fromShare + ((toShare - fromShare) * (now - fromMs)) / (toMs - fromMs);
        onLook(now, maxSteps === null ? share : this.steps / Math.max(1, maxSteps));
        // whoever is told may have taken a while
        if (env.isCancelled()) return "cancelled";
      }
      if (toStep !== null) {
        if (this.steps >= toStep) return "steps";
        share = this.steps / Math.max(1, maxSteps ?? toStep);
      }
      search.step(Math.min(1, share));
      this.steps++;
    }
  }

  private isOptimal(): boolean {
    const floor = this.prepared.bound.total;
    return this.bestMoney() <= floor + ROUNDING * Math.max(1, floor);
  }
}
