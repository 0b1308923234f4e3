import { addedShiftSpan, instantOfLocalText, lineOvertime, lineWorkingTime } from "@formweek/capacity-model";
import type { FormingLine, Plant, PlantCalendars, TimeWindow } from "@formweek/capacity-model";
import type { ProblemLine } from "@formweek/scheduler";
import type { ClosedSpell, ExtraSpell } from "./assembled.ts";
import type { SetupStates } from "./setup-states.ts";

export interface LinesInput {
  readonly plant: Plant;
  readonly window: TimeWindow;
  readonly calendars: PlantCalendars;
  readonly states: SetupStates;
}

/** A line for the scheduler, but for its change class, which needs every state first. */
export type UnclassedLine = Omit<ProblemLine, "changeClassId">;

/** Heads are kept in hundredths, so that half and three-quarter operators add up exactly. */
export const HUNDREDTHS = 100;

export function problemLines({ plant, window, calendars, states }: LinesInput): readonly UnclassedLine[] {
  return plant.lines.map((line) => ({
    id: line.id,
    workingTime: lineWorkingTime(plant, line, calendars),
    overtime: lineOvertime(plant, line, calendars),
    trolleyId: line.trolleyId,
    poolId: line.operatorPoolId,
    operatorsHundredths: Math.round(line.operatorsNeeded * HUNDREDTHS),
    restartLimitSeconds: Math.round(line.restartLimitMinutes * 60),
    restartWarmUpSeconds: Math.round(line.restartWarmUpMinutes * 60),
    initial: {
      setupId: states.ofMounted(line, plant),
      copy: line.mounted.mouldId === null || line.mounted.copy === null ? null : line.mounted.copy - 1,
    },
    freeAt: window.start,
  }));
}

/** Named closures of one line: its calendar's and its own, those that reach into the window. */
export function closuresOf(plant: Plant, line: FormingLine, window: TimeWindow): readonly ClosedSpell[] {
  const calendar = plant.calendars.find((record) => record.id === line.calendarId);
  const own = plant.lineClosures.filter((closure) => closure.lineId === line.id);
  return [...(calendar?.closures ?? []), ...own]
    .map((closure) => ({
      start: instantOfLocalText(plant.timeZone, closure.from) ?? window.start,
      end: instantOfLocalText(plant.timeZone, closure.to) ?? window.start,
      reason: closure.reason,
    }))
    .filter((spell) => spell.end > window.start && spell.start < window.end)
    .sort((a, b) => a.start - b.start);
}

/** Shifts of one line that are worked once: its calendar's and those added, that reach into the calendars' window. */
export function extraShiftsOf(
  plant: Plant,
  line: FormingLine,
  { byId, added }: PlantCalendars,
): readonly ExtraSpell[] {
  const ofCalendar = (byId.get(line.calendarId)?.shifts ?? []).filter(({ kind }) => kind === "extra");
  const ofLine = added.filter(({ shift }) => shift.lineIds.includes(line.id));
  return [
    ...ofCalendar,
    ...ofLine.map(({ shift }) => ({ ...addedShiftSpan(shift, plant.timeZone), name: shift.name })),
  ]
    .map(({ start, end, name }) => ({ start, end, name }))
    .sort((a, b) => a.start - b.start);
}
