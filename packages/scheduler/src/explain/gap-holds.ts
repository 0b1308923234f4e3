import type { MouldCopy } from "../plan/plan.ts";
import type { GapCause, GapStretch } from "./gap-cause.ts";
import { mouldRelease, releaseHolds, serviceHolds, crewBefore, type Hold } from "./holds.ts";
import type { ChangeStep, PlanSteps, Step } from "./plan-steps.ts";

/** Something that a step waited for until `until`. */
export interface GapHold {
  readonly until: number;
  /** What it comes to as a whole. */
  readonly cause: GapCause;
  /** The way there, up to `until`; the first one from whenever on. */
  readonly stretches: readonly GapStretch[];
}

function held(cause: GapCause, until: number): GapHold {
  return { until, cause, stretches: [{ from: -Infinity, to: until, cause }] };
}

const rootHolds = (holds: readonly Hold[]): readonly GapHold[] =>
  holds.flatMap((hold) => (hold.kind === "root" ? [held(hold.root, hold.at)] : []));

/** Until the copy that a change mounts has come from the line on which it hung. */
function mouldHolds(steps: PlanSteps, change: ChangeStep, copy: MouldCopy): readonly GapHold[] {
  const found = mouldRelease(steps, change);
  if (found === null || found.release.lineId === change.lineId) return [];
  const { release, arrives } = found;
  const before = steps.before(release);
  const lot = before?.kind === "lot" ? { orderId: before.orderId, lot: before.lot } : null;
  const cause: GapCause = { kind: "mould elsewhere", ...copy, lineId: release.lineId, lot };
  const leaves = release.segment.mountStart;
  // what hangs on the line is dismounted while the mould is on its way: the change then waits just as long
  const until = arrives >= change.segment.mountStart ? change.start : Math.min(arrives, change.start);
  const goes = Math.min(leaves, until);
  const stretches = [
    { from: -Infinity, to: goes, cause },
    { from: goes, to: until, cause: { kind: "mould carried", ...copy } as const },
  ];
  return [{ until, cause, stretches }];
}

function crewHolds(steps: PlanSteps, change: ChangeStep): readonly GapHold[] {
  const { teamId, trolleyId } = change.segment;
  const team = crewBefore(steps, change, "team");
  const trolley = crewBefore(steps, change, "trolley");
  const elsewhere = (other: ChangeStep | null): other is ChangeStep =>
    other !== null && other.lineId !== change.lineId;
  return [
    ...(teamId !== null && elsewhere(team)
      ? [held({ kind: "setters busy", teamId, lineId: team.lineId }, team.segment.tailStart)]
      : []),
    ...(trolleyId !== null && elsewhere(trolley)
      ? [held({ kind: "trolley busy", trolleyId, lineId: trolley.lineId }, trolley.segment.tailStart)]
      : []),
  ];
}

/** The line itself may not be free yet at the horizon's start. */
function lineHolds({ lines, before }: PlanSteps, step: Step): readonly GapHold[] {
  const freeAt = lines.get(step.lineId)?.freeAt;
  return before(step) === null && freeAt !== undefined
    ? [held({ kind: "line free", lineId: step.lineId }, freeAt)]
    : [];
}

/** Everything but its own line's steps that kept a step from beginning earlier, none later than the step. */
export function gapHolds(steps: PlanSteps, step: Step): readonly GapHold[] {
  const holds = [...lineHolds(steps, step), ...holdsOf(steps, step)];
  return holds.filter(({ until }) => until <= step.start);
}

function holdsOf(steps: PlanSteps, step: Step): readonly GapHold[] {
  if (step.kind === "lot")
    return rootHolds([...releaseHolds(steps, step), ...serviceHolds(steps, step.mould)]);
  const lot = steps.lotAfter(step);
  const releases = lot === null ? [] : releaseHolds(steps, lot);
  // a change may be done before its run is released, but not before the mould for it is in the plant
  const awaited = releases.filter(
    (hold) =>
      hold.kind === "root" && (hold.root.kind === "mould arrives" || steps.problem.changeAwaitsEarliestStart),
  );
  if (step.kind === "service") return rootHolds(awaited);
  const copy = step.segment.mouldIn;
  return [
    ...rootHolds([...awaited, ...serviceHolds(steps, copy)]),
    ...(copy === null ? [] : mouldHolds(steps, step, copy)),
    ...crewHolds(steps, step),
  ];
}

/** The hold that ends last; of equals the first. */
export function lastHold(holds: readonly GapHold[]): GapHold | null {
  return holds.reduce<GapHold | null>(
    (last, hold) => (last !== null && hold.until <= last.until ? last : hold),
    null,
  );
}
