import { workingBetween } from "@formweek/capacity-model";
import type { Plan } from "../plan/plan.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import {
  gapKind,
  holdsOfChange,
  holdsOfLot,
  holdsOfService,
  holdWithin,
  latestHold,
  releaseHolds,
  type Hold,
  type StepHold,
} from "./holds.ts";
import type { ChainCause, ChainLink, ChainRoot, LateChain, RootCause } from "./late-chain.ts";
import { planSteps, type ChangeStep, type LotStep, type PlanSteps, type Step } from "./plan-steps.ts";

/** The chain as it grows backwards from the finish. */
class ChainBuilder {
  /** Latest first while it grows. */
  private readonly links: ChainLink[] = [];

  add(cause: ChainCause, from: number, to: number): void {
    if (to > from) this.links.push({ ...cause, from, to });
  }

  inOrder(): readonly ChainLink[] {
    return [...this.links].reverse();
  }
}

function runCause(step: LotStep, until: number): ChainCause {
  // a service is a step of its own
  const seconds = { run: 0, closed: 0, operators: 0, "warm-up": 0, service: 0 };
  for (const segment of step.segments) {
    const kind = segment.kind === "run" ? "run" : segment.reason;
    seconds[kind] += Math.max(0, Math.min(segment.end, until) - segment.start);
  }
  const { lineId, orderId, lot } = step;
  return {
    kind: "run",
    lineId,
    orderId,
    lot,
    workSeconds: seconds.run,
    closedSeconds: seconds.closed,
    operatorSeconds: seconds.operators,
    warmUpSeconds: seconds["warm-up"],
  };
}

function changeCause(
  steps: PlanSteps,
  step: ChangeStep,
  [from, until]: readonly [number, number],
): ChainCause {
  const { segment, lineId } = step;
  const team = steps.problem.teams.find((each) => each.id === segment.teamId);
  const line = steps.lines.get(lineId);
  const byTeam =
    team === undefined ? 0 : workingBetween(team.workingTime, from, Math.min(until, segment.tailStart));
  const tail = line === undefined ? 0 : workingBetween(line.workingTime, segment.tailStart, until);
  const workSeconds = byTeam + tail;
  return { kind: "change", lineId, toSetupId: segment.toSetupId, teamId: segment.teamId, workSeconds };
}

const rootOf = (cause: RootCause, at: number): ChainRoot => ({ ...cause, at });

/** A change that was not begun at once because its run waits: the run's release is then the root. */
function releaseBehind(steps: PlanSteps, step: Step): RootCause | null {
  const lot = step.kind === "lot" ? null : steps.lotAfter(step);
  if (lot === null) return null;
  const release = latestHold(releaseHolds(steps, lot), lot.start);
  return release?.kind === "root" && release.at > step.start ? release.root : null;
}

/** What a step does in [from, until). */
function causeOf(
  steps: PlanSteps,
  step: Step,
  [from, until]: readonly [from: number, until: number],
): ChainCause {
  switch (step.kind) {
    case "lot":
      return runCause(step, until);
    case "change":
      return changeCause(steps, step, [from, until]);
    case "service": {
      const { lineId, orderId, lot } = step;
      const mouldId = steps.lotAfter(step)?.mould?.mouldId ?? "";
      return { kind: "mould service", mouldId, lineId, orderId, lot };
    }
  }
}

function holdsOf(steps: PlanSteps, step: Step): readonly Hold[] {
  switch (step.kind) {
    case "lot":
      return holdsOfLot(steps, step);
    case "change":
      return holdsOfChange(steps, step);
    case "service":
      return holdsOfService(steps, step);
  }
}

/** A plan's steps with what held each of them from its start, worked out once: chains share most of their links. */
class HeldSteps {
  readonly steps: PlanSteps;
  private readonly known = new Map<Step, Hold | null>();

  constructor(steps: PlanSteps) {
    this.steps = steps;
  }

  holdOf(step: Step): Hold | null {
    const known = this.known.get(step);
    if (known !== undefined) return known;
    const hold = latestHold(holdsOf(this.steps, step), step.start);
    this.known.set(step, hold);
    return hold;
  }
}

/** Walks back from a lot's end to what nothing in the plan could have moved. */
function walkBack(held: HeldSteps, last: LotStep, chain: ChainBuilder): ChainRoot {
  const { steps } = held;
  let step: Step = last;
  let until = last.end;
  for (;;) {
    const within: StepHold | null = step.kind === "change" ? holdWithin(steps, step, until) : null;
    const from = within?.at ?? step.start;
    chain.add(causeOf(steps, step, [from, until]), from, until);
    const hold: Hold | null = within ?? held.holdOf(step);
    if (hold === null) return rootOf({ kind: "line free", lineId: step.lineId }, step.start);
    if (hold.at < step.start) {
      const kind = gapKind(steps, step, hold.at);
      const release = kind === "other work first" ? releaseBehind(steps, step) : null;
      if (release !== null) return rootOf(release, step.start);
      const teamId = step.kind === "change" ? step.segment.teamId : null;
      const { lineId } = step;
      chain.add(kind === "setters off" ? { kind, lineId, teamId } : { kind, lineId }, hold.at, step.start);
    }
    if (hold.kind === "root") return rootOf(hold.root, hold.at);
    if (hold.carried !== null) {
      const { mouldId, copy } = hold.carried;
      chain.add({ kind: "carrying", mouldId, copy, lineId: step.lineId }, hold.until, hold.at);
    }
    step = hold.step;
    until = hold.until;
  }
}

function chainOf(held: HeldSteps, orderId: string): LateChain | null {
  const { jobs, lotsByOrder } = held.steps;
  const job = jobs.get(orderId);
  const lots = lotsByOrder.get(orderId) ?? [];
  const last = lots.reduce<LotStep | null>(
    (latest, lot) => (latest === null || lot.end > latest.end ? lot : latest),
    null,
  );
  if (job === undefined || last === null) return null;
  const finishAt = last.end + job.conditioningSeconds;
  const chain = new ChainBuilder();
  chain.add({ kind: "conditioning", orderId }, last.end, finishAt);
  const root = walkBack(held, last, chain);
  return {
    orderId,
    dueAt: job.dueAt,
    finishAt,
    lateSeconds: Math.max(0, finishAt - job.dueAt),
    root,
    links: chain.inOrder(),
  };
}

/**
 * What holds an order of an audited plan where it is: the chain back from its finish through run, change, mould, team, closed
 * time and other orders to a root, with hours for each link. Null for an order that the plan does not make.
 * O(segments × log), and the changes of a crew once more for each link.
 */
export function whyThen(problem: ProblemData, plan: Plan, orderId: string): LateChain | null {
  return chainOf(new HeldSteps(planSteps(problem, plan)), orderId);
}

/** The chains of all late orders, most late first. What holds a step is worked out once, however many chains go through it. */
export function whyLate(problem: ProblemData, plan: Plan): readonly LateChain[] {
  const steps = planSteps(problem, plan);
  const held = new HeldSteps(steps);
  const late = new Set(
    plan.lots
      .filter((lot) => lot.finish > (steps.jobs.get(lot.orderId)?.dueAt ?? Infinity))
      .map((lot) => lot.orderId),
  );
  return [...late]
    .flatMap((orderId) => chainOf(held, orderId) ?? [])
    .sort((a, b) => b.lateSeconds - a.lateSeconds || (a.orderId < b.orderId ? -1 : 1));
}
