import { auditing } from "../audit/audit-plan.ts";
import { explainingUnplanned } from "../explain/why-unplanned.ts";
import { buildPlan } from "../plan/build-plan.ts";
import type { Plan } from "../plan/plan.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { isLarge } from "../problem/plant-size.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import { validate } from "../problem/validate.ts";
import type { SolveRefusal, SolveResult, StopReason, Violation } from "../result.ts";
import type { SolveEnv, SolveParams } from "../solve-env.ts";
import { Decoder } from "../timing/decoder.ts";
import { isSamePlan, type Sequences } from "../timing/sequences.ts";
import { finish, finishUnless, type Work } from "../work/work.ts";
import type { Adoption, Standing, Winner } from "./course.ts";
import { memberOf } from "./member.ts";
import { bounded, firstPlanning, type FirstPlan, type Prepared } from "./prepare.ts";
import type { Round } from "./round.ts";
import { SearchSession } from "./search-session.ts";

/** Least time between two progress reports, ms. */
const REPORT_EVERY_MS = 100;

interface Seat {
  readonly member: number;
  readonly session: SearchSession;
  ended: StopReason;
}

/** What a group is opened with. */
export interface GroupTask {
  readonly problem: ProblemData;
  readonly params: SolveParams;
  /** Numbers of the members that the group carries; at least one. */
  readonly members: readonly number[];
}

/** A plan and what the audit says of it. */
interface AuditedPlan {
  readonly plan: Plan;
  readonly violations: readonly Violation[];
}

/** Prepared, with the plan of its start where that is made already. */
type Seating = Prepared & { readonly startPlan: AuditedPlan | null };

/** The plan of sequences, with stretches, reasons and breakdown. */
function* planning(problem: CompiledProblem, sequences: Sequences): Work<Plan> {
  const decoder = new Decoder(problem, true);
  decoder.decode(sequences);
  yield;
  const unplanned = yield* explainingUnplanned(decoder);
  yield;
  return buildPlan(problem, decoder, unplanned);
}

/** The plan of sequences, audited. */
function* auditedPlanning(problem: CompiledProblem, sequences: Sequences): Work<AuditedPlan> {
  const plan = yield* planning(problem, sequences);
  yield;
  return { plan, violations: yield* auditing(problem.data, plan) };
}

/** The members of a portfolio that one thread carries, one after the other within each round. */
export class MemberGroup {
  private readonly prepared: Seating;
  private readonly seats: Seat[] = [];
  private readonly env: SolveEnv;
  private lastReport: number;

  constructor({ params, members }: Omit<GroupTask, "problem">, prepared: Seating, env: SolveEnv) {
    this.prepared = prepared;
    this.env = env;
    this.lastReport = prepared.startedMs;
    for (const member of members) {
      // the first is there to hand out its plan
      if (this.seats.length > 0 && env.isCancelled()) break;
      const session = new SearchSession(prepared, memberOf(params, member), params, env);
      this.seats.push({ member, session, ended: "steps" });
    }
  }

  /** Takes over the plans for its members, then lets each of them make its part of the round. */
  runRound(round: Round, adoptions: readonly Adoption[]): readonly Standing[] {
    for (const { member, elite } of adoptions) {
      if (this.env.isCancelled()) break;
      this.seats.find((seat) => seat.member === member)?.session.adopt(elite);
    }
    const { fromShare, toShare, toStep, ms } = round;
    const startMs = this.env.monotonicMs();
    const turns = toStep === null ? this.seats.length : 1;
    const shown = (turn: number, share: number): number =>
      fromShare + (turn * (toShare - fromShare) + share - fromShare) / this.seats.length;
    this.seats.forEach((seat, turn) => {
      if (this.env.isCancelled()) {
        // a search asks only every so many steps
        seat.ended = "cancelled";
        return;
      }
      const fromMs = this.env.monotonicMs();
      // by time alone, each has its part of what is left of the round; by steps, the end of the time is that of all
      const toMs = ms === null ? null : startMs + (ms * (turn + 1)) / turns;
      const stretch = { toStep, fromMs, toMs, fromShare, toShare };
      seat.ended = seat.session.advance(stretch, (now, share) => this.report(now, shown(turn, share)));
    });
    return this.seats.map(({ member, session, ended }) => ({
      member,
      money: session.bestMoney(),
      elite: session.elite(),
      steps: session.steps,
      evaluations: session.evaluations(),
      ended,
    }));
  }

  /** The audited plan of the portfolio's winner, who is one of this group's members. */
  finish({ member, stopped, steps, evaluations }: Winner): SolveResult {
    const seat = this.seats.find((each) => each.member === member) ?? this.seats[0]!;
    const { plan, violations } = this.auditedPlan(seat.session.elite());
    const { firstPlanMs, firstTotal, bound, startedMs } = this.prepared;
    const elapsedMs = this.env.monotonicMs() - startedMs;
    const bestTotal = plan.objective.total;
    const statistics = { steps, evaluations, elapsedMs, firstPlanMs, firstTotal, bestTotal };
    if (violations.length > 0) return { status: "rejected", violations, statistics };
    return { status: "planned", plan, bound, stopped, statistics };
  }

  private auditedPlan(elite: Sequences): AuditedPlan {
    const { problem, start, startPlan } = this.prepared;
    const isStart = startPlan !== null && isSamePlan(problem, elite, start);
    return isStart ? startPlan : finish(auditedPlanning(problem, elite));
  }

  private report(nowMs: number, share: number): void {
    if (nowMs - this.lastReport < REPORT_EVERY_MS) return;
    this.lastReport = nowMs;
    const best = this.seats.reduce((least, each) =>
      each.session.bestMoney() < least.session.bestMoney() ? each : least,
    ).session;
    const elite = best.elite();
    const decoder = new Decoder(this.prepared.problem, false);
    decoder.decode(elite);
    this.env.onProgress({
      steps: this.seats.reduce((sum, { session }) => sum + session.steps, 0),
      elapsedMs: nowMs - this.prepared.startedMs,
      share: Math.min(1, share),
      bestTotal: best.bestMoney(),
      lateOrders: decoder.sums.lateOrders,
      bestPlan: () => this.soundPlan(elite),
    });
  }

  private soundPlan(elite: Sequences): Plan | null {
    const audited = finishUnless(this.env.isCancelled, auditedPlanning(this.prepared.problem, elite));
    return audited === null || audited.violations.length > 0 ? null : audited.plan;
  }
}

/** A group that is ready for its first round; or, where there can be none, how the solve ends. */
export type OpenedGroup = { readonly status: "open"; readonly group: MemberGroup } | SolveRefusal;

/** A first plan; audited where that takes long enough to be noticed after a cancel, else null. */
interface Opened {
  readonly first: FirstPlan;
  readonly startPlan: AuditedPlan | null;
}

/**
 * The first plan of a large problem is audited at once: so it can be handed out at once, and what makes and audits plans has run
 * before a cancel waits for it.
 */
function* opening({ problem, params }: GroupTask, env: SolveEnv): Work<Opened> {
  const first = yield* firstPlanning(problem, params, env);
  yield;
  const startPlan = isLarge(problem) ? yield* auditedPlanning(first.problem, first.start) : null;
  return { first, startPlan };
}

/** Names the problem's faults, or makes the first plan and seats the members. */
export function openGroup(task: GroupTask, env: SolveEnv): OpenedGroup {
  const faults = validate(task.problem);
  if (faults.length > 0) return { status: "faulty-problem", faults };
  // a cancel waits for the first plan of a small problem
  const isGivenUp = isLarge(task.problem) ? env.isCancelled : () => false;
  const opened = finishUnless(isGivenUp, opening(task, env));
  if (opened === null) return { status: "cancelled" };
  const prepared = { ...bounded(opened.first, env), startPlan: opened.startPlan };
  return { status: "open", group: new MemberGroup(task, prepared, env) };
}
