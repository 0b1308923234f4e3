import { workingBetween } from "@formweek/capacity-model";
import type { RootCause } from "./late-chain.ts";
import {
  copyKey,
  type ChangeStep,
  type LotStep,
  type PlanSteps,
  type ServiceStep,
  type Step,
} from "./plan-steps.ts";

/** Something that kept a step from beginning before `at`: a root, or a step that went on until then. */
export type Hold =
  | { readonly kind: "root"; readonly at: number; readonly root: RootCause }
  | {
      readonly kind: "step";
      readonly at: number;
      readonly step: Step;
      /** Wall clock between the step's part and `at` in which a mould is carried, s. */
      readonly carried: { readonly seconds: number; readonly mouldId: string; readonly copy: number } | null;
      /** How far into the step it holds: a mould until dismounting is done, a team until mounting is done. */
      readonly until: number;
    };

const byLine = (steps: PlanSteps, step: Step): Hold => {
  const before = steps.before(step);
  if (before !== null)
    return { kind: "step", at: before.end, step: before, carried: null, until: before.end };
  const freeAt = steps.lines.get(step.lineId)?.freeAt ?? steps.problem.horizon.start;
  const at = Math.max(freeAt, steps.problem.horizon.start);
  return { kind: "root", at, root: { kind: "line free", lineId: step.lineId } };
};

/** First instant at which a sheet's supply covers the lot and all lots of the sheet that started before it. */
function sheetInstant(steps: PlanSteps, lot: LotStep): number | null {
  const job = steps.jobs.get(lot.orderId);
  const sheet = steps.problem.sheets.find((record) => record.id === job?.sheetId);
  if (sheet === undefined || sheet.stockKg === null) return null;
  let needed = 0;
  for (const other of steps.lotsBySheet.get(sheet.id) ?? []) {
    const user = steps.jobs.get(other.orderId);
    if (user === undefined || other.start > lot.start) continue;
    for (const segment of other.segments)
      if (segment.kind === "run") needed += segment.pieces * user.sheetKgPerPiece;
  }
  let supplied = sheet.stockKg;
  // rounding of sums of many lots: a milligram is let pass
  for (const arrival of [...sheet.arrivals].sort((a, b) => a.at - b.at)) {
    if (supplied + 1e-6 >= needed) return null;
    supplied += arrival.kg;
    if (supplied + 1e-6 >= needed) return arrival.at;
  }
  return null;
}

/** Instants before which the order itself forbids the run, of whatever line is free. */
export function releaseHolds(steps: PlanSteps, lot: LotStep): Hold[] {
  const { problem } = steps;
  const job = steps.jobs.get(lot.orderId);
  if (job === undefined) return [];
  const root = (at: number, cause: RootCause): Hold => ({ kind: "root", at, root: cause });
  const holds: Hold[] = [];
  if (job.earliestStartAt > problem.horizon.start)
    holds.push(root(job.earliestStartAt, { kind: "earliest start", orderId: job.orderId }));
  const pin = problem.pins.find((each) => each.orderId === job.orderId);
  const fixed = pin?.startAt ?? null;
  if (fixed !== null && lot.lot === 0)
    holds.push(root(fixed, { kind: "pinned start", orderId: job.orderId }));
  const option = job.options.find((each) => each.lineId === lot.lineId && each.setupId === lot.setupId);
  if (option?.availableFromAt !== undefined)
    holds.push(root(option.availableFromAt, { kind: "mould arrives", lineId: lot.lineId }));
  const arrival = sheetInstant(steps, lot);
  if (arrival !== null && job.sheetId !== null)
    holds.push(root(arrival, { kind: "sheet arrival", sheetId: job.sheetId }));
  return holds;
}

/** Ends of the spells in which a mould's copy is out of service. */
export function serviceHolds(steps: PlanSteps, mould: LotStep["mould"]): Hold[] {
  if (mould === null) return [];
  const record = steps.problem.moulds.find((each) => each.id === mould.mouldId);
  return (record?.outOfService ?? [])
    .filter((spell) => spell.copy === mould.copy)
    .map((spell) => ({
      kind: "root",
      at: spell.end,
      root: { kind: "mould out of service", mouldId: mould.mouldId, copy: mould.copy },
    }));
}

/** All that may have kept a lot from starting earlier, the line's own step first. */
export function holdsOfLot(steps: PlanSteps, lot: LotStep): Hold[] {
  return [byLine(steps, lot), ...releaseHolds(steps, lot), ...serviceHolds(steps, lot.mould)];
}

/** All that may have kept a service from starting earlier. */
export function holdsOfService(steps: PlanSteps, service: ServiceStep): Hold[] {
  return [byLine(steps, service), ...opensOf(steps, service)];
}

/** Instants before which the order's option forbids even what prepares the run. */
function opensOf(steps: PlanSteps, step: ChangeStep | ServiceStep): Hold[] {
  const lot = steps.lotAfter(step);
  return lot === null ? [] : releaseHolds(steps, lot).filter((hold) => awaited(steps, hold));
}

function lastOf(changes: readonly ChangeStep[], endOf: (change: ChangeStep) => number): ChangeStep | null {
  return changes.reduce<ChangeStep | null>(
    (last, change) => (last === null || endOf(change) > endOf(last) ? change : last),
    null,
  );
}

/** The change that took the mounted copy off its last line, and when the copy came from there. */
export function mouldRelease(
  steps: PlanSteps,
  { lineId, segment }: ChangeStep,
): { readonly release: ChangeStep; readonly arrives: number } | null {
  const copy = segment.mouldIn;
  if (copy === null) return null;
  const releases = (steps.dismounts.get(copyKey(copy)) ?? []).filter(
    (other) => other.segment !== segment && other.segment.mountStart <= segment.mountStart,
  );
  const release = lastOf(releases, (other) => other.segment.mountStart);
  if (release === null) return null;
  const record = steps.problem.moulds.find((each) => each.id === copy.mouldId);
  const seconds = release.lineId === lineId ? 0 : (record?.carryingSeconds ?? 0);
  return { release, arrives: release.segment.mountStart + seconds };
}

export type StepHold = Extract<Hold, { kind: "step" }>;

/** Mounting began when the mould came, from a step that ended at `until`: so it holds from `at` on. */
function carriedHold(mould: NonNullable<LotStep["mould"]>, release: ChangeStep, at: number): StepHold {
  const until = Math.min(at, release.segment.mountStart);
  return { kind: "step", at, step: release, carried: { seconds: at - until, ...mould }, until };
}

/** The change that took the mounted copy off its last line, as seen from the start of the mounting change. */
function mouldHold(steps: PlanSteps, change: ChangeStep): Hold[] {
  const { segment } = change;
  const copy = segment.mouldIn;
  const found = mouldRelease(steps, change);
  if (copy === null || found === null) return serviceHolds(steps, copy);
  const { release, arrives } = found;
  // dismounting may go on while the mould comes: seen from the change's start it holds that much earlier
  const at = arrives >= segment.mountStart ? segment.start : Math.min(arrives, segment.start);
  // begun after this change: it can hold the mounting (`holdWithin`), but not the start
  if (release.start > at) return serviceHolds(steps, copy);
  return [carriedHold(copy, release, at), ...serviceHolds(steps, copy)];
}

/**
 * What held a change's mounting while its dismounting went on: a mould's release that began after the change did. Null where
 * none did, or where only what came before `until` counts and that was not it.
 */
export function holdWithin(steps: PlanSteps, change: ChangeStep, until: number): StepHold | null {
  const { mouldIn, mountStart, start } = change.segment;
  const found = mouldRelease(steps, change);
  if (mouldIn === null || found === null || mountStart >= until) return null;
  const isHeld = found.arrives >= mountStart && found.release.start > start;
  return isHeld ? carriedHold(mouldIn, found.release, mountStart) : null;
}

/** What does one change at a time: the team that makes it, or the trolley that its mould travels on. */
export type Crew = "team" | "trolley";

/** The change at which a change's team, or its trolley, was last before it. */
export function crewBefore(steps: PlanSteps, change: ChangeStep, crew: Crew): ChangeStep | null {
  const { teamId, trolleyId } = change.segment;
  const own =
    crew === "team"
      ? teamId !== null && steps.changesByTeam.get(teamId)
      : trolleyId !== null && steps.changesByTrolley.get(trolleyId);
  if (own === false || own === undefined) return null;
  const earlier = own.filter((other) => other !== change && other.segment.tailStart <= change.start);
  return lastOf(earlier, (other) => other.segment.tailStart);
}

function crewHold(steps: PlanSteps, change: ChangeStep, crew: Crew): Hold[] {
  const last = crewBefore(steps, change, crew);
  if (last === null) return [];
  const until = last.segment.tailStart;
  return [{ kind: "step", at: until, step: last, carried: null, until }];
}

/** All that may have kept a change from starting earlier: its line, its team, its trolley, its mould. */
export function holdsOfChange(steps: PlanSteps, change: ChangeStep): Hold[] {
  return [
    byLine(steps, change),
    ...mouldHold(steps, change),
    ...crewHold(steps, change, "team"),
    ...crewHold(steps, change, "trolley"),
    ...opensOf(steps, change),
  ];
}

function awaited(steps: PlanSteps, hold: Hold): boolean {
  if (hold.kind !== "root") return false;
  return hold.root.kind === "mould arrives" || steps.problem.changeAwaitsEarliestStart;
}

/** The latest of the holds that lie at or before an instant; of equals the first. */
export function latestHold(holds: readonly Hold[], at: number): Hold | null {
  return holds.reduce<Hold | null>(
    (latest, hold) => (hold.at > at || (latest !== null && hold.at <= latest.at) ? latest : hold),
    null,
  );
}

/** Kind of a gap in which neither line nor crew had anything to do for the step that follows. */
export function gapKind(
  steps: PlanSteps,
  step: Step,
  from: number,
): "line closed" | "no operators" | "setters off" | "other work first" {
  const line = steps.lines.get(step.lineId);
  if (line === undefined) return "other work first";
  if (step.kind === "lot") {
    if (workingBetween(line.workingTime, from, step.start) === 0) return "line closed";
    return line.poolId === null ? "other work first" : "no operators";
  }
  const teamId = step.kind === "service" ? null : step.segment.teamId;
  if (teamId === null)
    return workingBetween(line.workingTime, from, step.start) === 0 ? "line closed" : "other work first";
  const team = steps.problem.teams.find((each) => each.id === teamId);
  const off = team === undefined || workingBetween(team.workingTime, from, step.start) === 0;
  return off ? "setters off" : "other work first";
}
