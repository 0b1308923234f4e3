import {
  clipWorkingTime,
  isOpen,
  spellsOf,
  subtractWorkingTime,
  workingBetween,
  workingTimeOf,
  type WorkingTime,
} from "@formweek/capacity-model";
import type { ProblemLine } from "../problem/problem-data.ts";
import type { GapCause, GapStretch } from "./gap-cause.ts";
import { latestHold, releaseHolds } from "./holds.ts";
import type { ChangeStep, PlanSteps, Step } from "./plan-steps.ts";

interface Spell {
  readonly from: number;
  readonly to: number;
}

/** A spell cut where a working time opens and closes. */
function cutBy(
  time: WorkingTime,
  { from, to }: Spell,
  causes: (open: Spell) => GapCause,
  closed: GapCause,
): GapStretch[] {
  if (from >= to) return [];
  const open = clipWorkingTime(time, from, to);
  const stretch = ([start, end]: readonly [number, number], cause: GapCause): GapStretch => ({
    from: start,
    to: end,
    cause,
  });
  return [
    ...spellsOf(open).map((spell) => stretch(spell, causes({ from: spell[0], to: spell[1] }))),
    ...spellsOf(subtractWorkingTime(workingTimeOf([[from, to]]), open)).map((spell) =>
      stretch(spell, closed),
    ),
  ].sort((a, b) => a.from - b.from);
}

/** Heads of a pool that no line needs at an instant, hundredths. */
function spareHeads({ problem, lots, lines }: PlanSteps, poolId: string, at: number): number {
  const pool = problem.pools.find(({ id }) => id === poolId);
  const there = (pool?.crews ?? []).filter(({ workingTime }) => isOpen(workingTime, at));
  const supply = there.reduce((sum, { hundredths }) => sum + hundredths, 0);
  const needed = lots
    .filter(({ lineId }) => lines.get(lineId)?.poolId === poolId)
    .filter(({ segments }) =>
      segments.some(
        (segment) =>
          (segment.kind === "run" || segment.reason === "warm-up") && segment.start <= at && at < segment.end,
      ),
    )
    .reduce((sum, { lineId }) => sum + (lines.get(lineId)?.operatorsHundredths ?? 0), 0);
  return supply - needed;
}

/** Open time in which a run could have begun but did not. */
function whyNotOpen(steps: PlanSteps, line: ProblemLine, { from, to }: Spell): GapCause {
  const { id: lineId, poolId, operatorsHundredths } = line;
  if (poolId !== null && spareHeads(steps, poolId, from) < operatorsHundredths)
    return { kind: "no operators", lineId, poolId };
  const closesSoon = !isOpen(line.workingTime, to) && to - from < line.restartWarmUpSeconds;
  return closesSoon ? { kind: "stop too near", lineId } : { kind: "other work first", lineId };
}

/** The change was not begun because its run is not released yet: begun later it does not stand ready for nothing. */
function releaseAfter(steps: PlanSteps, step: Step): GapCause | null {
  const lot = step.kind === "lot" ? null : steps.lotAfter(step);
  const release = lot === null ? null : latestHold(releaseHolds(steps, lot), lot.start);
  return release?.kind === "root" && release.at > step.start ? release.root : null;
}

function restOfChange(steps: PlanSteps, step: ChangeStep, rest: Spell, line: ProblemLine): GapStretch[] {
  const { teamId } = step.segment;
  const team = steps.problem.teams.find(({ id }) => id === teamId);
  const time = team?.workingTime ?? line.workingTime;
  const closed: GapCause =
    team === undefined ? { kind: "line closed", lineId: line.id } : { kind: "setters off", teamId: team.id };
  const waits = workingBetween(time, rest.from, rest.to) > 0 ? releaseAfter(steps, step) : null;
  if (waits !== null) return rest.from < rest.to ? [{ ...rest, cause: waits }] : [];
  return cutBy(time, rest, () => ({ kind: "other work first", lineId: line.id }), closed);
}

/** What the rest of a gap is, after everything that the step waited for is there: hours in which it may not be done. */
export function restOfGap(steps: PlanSteps, step: Step, rest: Spell): readonly GapStretch[] {
  const line = steps.lines.get(step.lineId);
  if (line === undefined) return [];
  switch (step.kind) {
    case "change":
      return restOfChange(steps, step, rest, line);
    case "lot":
      return cutBy(line.workingTime, rest, (open) => whyNotOpen(steps, line, open), {
        kind: "line closed",
        lineId: line.id,
      });
    case "service":
      return rest.from < rest.to
        ? [{ ...rest, cause: releaseAfter(steps, step) ?? { kind: "other work first", lineId: line.id } }]
        : [];
  }
}
