import { workingBetween } from "@formweek/capacity-model";
import type { WorkingTime } from "@formweek/capacity-model";
import type { Plan } from "@formweek/scheduler";
import type { Assembled } from "./assembled.ts";
import { isoInstant } from "./iso-instant.ts";
import type { DocumentLine, DocumentTeam } from "./plan-document.ts";

/** Half-open span of time that a description covers. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** Lines with their working spells and the split of their time inside the span. */
export function describeLines(assembled: Assembled, plan: Plan, span: Span): readonly DocumentLine[] {
  const names = new Map<string, string>(assembled.plant.lines.map((line) => [line.id, line.name]));
  return assembled.problem.lines.map((line) => ({
    id: line.id,
    name: names.get(line.id) ?? line.id,
    open: spellsWithin(line.workingTime, span),
    closures: (assembled.closures.get(line.id) ?? [])
      .filter((closure) => closure.end > span.start && closure.start < span.end)
      .map((closure) => ({
        start: isoInstant(closure.start),
        end: isoInstant(closure.end),
        reason: closure.reason,
      })),
    extraShifts: (assembled.extraShifts.get(line.id) ?? [])
      .filter((shift) => shift.end > span.start && shift.start < span.end)
      .map(({ start, end, name }) => ({ start: isoInstant(start), end: isoInstant(end), name })),
    utilisation: splitOfTime(line.id, line.workingTime, plan, span),
  }));
}

/** Setter teams with their working spells inside the span. */
export function describeTeams(assembled: Assembled, span: Span): readonly DocumentTeam[] {
  const names = new Map<string, string>(assembled.plant.setterTeams.map((team) => [team.id, team.name]));
  return assembled.problem.teams.map(({ id, workingTime }) => ({
    id,
    name: names.get(id) ?? id,
    open: spellsWithin(workingTime, span),
  }));
}

function spellsWithin(time: WorkingTime, span: Span): readonly (readonly [string, string])[] {
  const spells: [string, string][] = [];
  time.starts.forEach((start, index) => {
    const from = Math.max(start, span.start);
    const to = Math.min(time.ends[index] ?? from, span.end);
    if (to > from) spells.push([isoInstant(from), isoInstant(to)]);
  });
  return spells;
}

/** Run, change, stop and idle lie in working time; closed is the rest: the five add up to the span. */
function splitOfTime(lineId: string, time: WorkingTime, plan: Plan, span: Span): DocumentLine["utilisation"] {
  const open = workingBetween(time, span.start, span.end);
  const seconds = { run: 0, change: 0, stop: 0 };
  for (const segment of plan.segments) {
    if (segment.lineId !== lineId) continue;
    seconds[segment.kind] += workingBetween(
      time,
      Math.max(segment.start, span.start),
      Math.min(segment.end, span.end),
    );
  }
  return {
    runSeconds: seconds.run,
    changeSeconds: seconds.change,
    stopSeconds: seconds.stop,
    idleSeconds: open - seconds.run - seconds.change - seconds.stop,
    closedSeconds: span.end - span.start - open,
  };
}
