import type { AddedShift } from "../plant/added-shift.ts";
import type { OperatorPool, SetterTeam } from "../plant/crew.ts";
import type { FormingLine } from "../plant/forming-line.ts";
import type { Mould } from "../plant/mould.ts";
import type { Plant } from "../plant/plant.ts";
import type { CalendarId } from "../plant/scalars.ts";
import { addedShiftSpan, compileCalendar } from "./compile-calendar.ts";
import type { CompiledCalendar, TimeWindow } from "./compile-calendar.ts";
import { instantOfLocalText } from "./time-zone.ts";
import { NEVER_OPEN, clipWorkingTime, subtractWorkingTime, uniteWorkingTimes } from "./working-sets.ts";
import { workingTimeOf } from "./working-time.ts";
import type { WorkingTime } from "./working-time.ts";

/** What of a plant says when it works. */
export type PlantTimes = Pick<Plant, "timeZone" | "calendars" | "lineClosures" | "addedShifts">;

/** What of a plant says when it works, compiled for one window. */
export interface PlantCalendars {
  readonly byId: ReadonlyMap<CalendarId, CompiledCalendar>;
  /** Shifts on top of the calendars that reach into the window, their working time cut to it. */
  readonly added: readonly { readonly shift: AddedShift; readonly workingTime: WorkingTime }[];
}

/** Heads that come and go together. */
export interface CrewHours {
  readonly workingTime: WorkingTime;
  readonly heads: number;
}

/** Calendars and added shifts of a plant in one window. The plant's zone must be known. */
export function compilePlantCalendars(plant: PlantTimes, window: TimeWindow): PlantCalendars {
  const { timeZone } = plant;
  const added = plant.addedShifts.map((shift) => {
    const { workingTime } = addedShiftSpan(shift, timeZone);
    return { shift, workingTime: clipWorkingTime(workingTime, window.start, window.end) };
  });
  return {
    byId: new Map(
      plant.calendars.map((calendar) => [calendar.id, compileCalendar({ calendar, timeZone, window })]),
    ),
    added: added.filter(({ workingTime }) => workingTime.starts.length > 0),
  };
}

/** Spells in which one line stands by the planner's word or a breakdown, uncut. */
export function lineStandstill(plant: PlantTimes, line: FormingLine): WorkingTime {
  return workingTimeOf(
    plant.lineClosures
      .filter((closure) => closure.lineId === line.id)
      .map((closure): [number, number] => [
        instantOfLocalText(plant.timeZone, closure.from) ?? 0,
        instantOfLocalText(plant.timeZone, closure.to) ?? 0,
      ]),
  );
}

/** Working time of a line: its calendar and added shifts less its own closures, which win over both. */
export function lineWorkingTime(
  plant: PlantTimes,
  line: FormingLine,
  calendars: PlantCalendars,
): WorkingTime {
  const whole = uniteWorkingTimes(calendarTime(calendars, line), addedTo(calendars, line));
  return subtractWorkingTime(whole, lineStandstill(plant, line));
}

/** The part of a line's working time that is there only because of extra and added shifts; its own closures come off it too. */
export function lineOvertime(plant: PlantTimes, line: FormingLine, calendars: PlantCalendars): WorkingTime {
  const extra = calendars.byId.get(line.calendarId)?.overtime ?? NEVER_OPEN;
  const added = subtractWorkingTime(addedTo(calendars, line), calendarTime(calendars, line));
  return subtractWorkingTime(uniteWorkingTimes(extra, added), lineStandstill(plant, line));
}

/** Working time of a setter team: its calendar and the added shifts to which it comes. */
export function teamWorkingTime(team: SetterTeam, calendars: PlantCalendars): WorkingTime {
  const added = calendars.added.filter(({ shift }) => shift.teamIds.includes(team.id));
  return uniteWorkingTimes(calendarTime(calendars, team), ...added.map(({ workingTime }) => workingTime));
}

/** Operators of a pool, crew by crew: those of its calendars, then those of added shifts. */
export function poolCrews(pool: OperatorPool, calendars: PlantCalendars): readonly CrewHours[] {
  const regular = pool.crews.map((crew) => ({
    workingTime: calendarTime(calendars, crew),
    heads: crew.heads,
  }));
  const added = calendars.added.flatMap(({ shift, workingTime }) =>
    shift.operators
      .filter(({ poolId }) => poolId === pool.id)
      .map(({ heads }): CrewHours => ({ workingTime, heads })),
  );
  return [...regular, ...added];
}

/** Never open without a calendar. */
function calendarTime(
  { byId }: PlantCalendars,
  { calendarId }: { readonly calendarId: CalendarId },
): WorkingTime {
  return byId.get(calendarId)?.workingTime ?? NEVER_OPEN;
}

function addedTo({ added }: PlantCalendars, line: FormingLine): WorkingTime {
  return uniteWorkingTimes(
    ...added.filter(({ shift }) => shift.lineIds.includes(line.id)).map(({ workingTime }) => workingTime),
  );
}

/** Spells in which a mould's copies (0-based) may not be mounted, by copy and start; a spell for every copy is spread out. */
export function mouldOutOfService(
  mould: Mould,
  timeZone: string,
): readonly { readonly copy: number; readonly start: number; readonly end: number }[] {
  return Array.from({ length: mould.copies }, (_, copy) => {
    const spells = mould.outOfService.filter((spell) => spell.copy === null || spell.copy === copy + 1);
    const closed = workingTimeOf(
      spells.map((spell): [number, number] => [
        instantOfLocalText(timeZone, spell.from) ?? 0,
        instantOfLocalText(timeZone, spell.to) ?? 0,
      ]),
    );
    return closed.starts.map((start, index) => ({ copy, start, end: closed.ends[index] as number }));
  }).flat();
}
