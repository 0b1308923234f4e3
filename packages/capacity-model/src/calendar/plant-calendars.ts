import type { FormingLine } from "../plant/forming-line.ts";
import type { Mould } from "../plant/mould.ts";
import type { Plant } from "../plant/plant.ts";
import type { CalendarId } from "../plant/scalars.ts";
import { compileCalendar } from "./compile-calendar.ts";
import type { CompiledCalendar, TimeWindow } from "./compile-calendar.ts";
import { instantOfLocalText } from "./time-zone.ts";
import { NEVER_OPEN, subtractWorkingTime } from "./working-sets.ts";
import { workingTimeOf } from "./working-time.ts";
import type { WorkingTime } from "./working-time.ts";

/** What of a plant says when it works. */
export type PlantTimes = Pick<Plant, "timeZone" | "calendars" | "lineClosures">;

/** Every calendar of a plant in one window, by id. The plant's zone must be known. */
export function compilePlantCalendars(
  plant: PlantTimes,
  window: TimeWindow,
): ReadonlyMap<CalendarId, CompiledCalendar> {
  return new Map(
    plant.calendars.map((calendar) => [
      calendar.id,
      compileCalendar({ calendar, timeZone: plant.timeZone, window }),
    ]),
  );
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

/** Working time of a line: its calendar less its own closures, which win over extra shifts; never open without a calendar. */
export function lineWorkingTime(
  plant: PlantTimes,
  line: FormingLine,
  calendars: ReadonlyMap<CalendarId, CompiledCalendar>,
): WorkingTime {
  const calendar = calendars.get(line.calendarId);
  return calendar === undefined
    ? NEVER_OPEN
    : subtractWorkingTime(calendar.workingTime, lineStandstill(plant, line));
}

/** The part of a line's working time that is there only because of extra shifts; its own closures come off it too. */
export function lineOvertime(
  plant: PlantTimes,
  line: FormingLine,
  calendars: ReadonlyMap<CalendarId, CompiledCalendar>,
): WorkingTime {
  const overtime = calendars.get(line.calendarId)?.overtime ?? NEVER_OPEN;
  return subtractWorkingTime(overtime, lineStandstill(plant, line));
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
