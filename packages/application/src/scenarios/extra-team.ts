import {
  type ExtraShift,
  type Plant,
  SetterTeam,
  WorkCalendar,
  localDateText,
  localDayAt,
  localTextAt,
  startOfLocalDay,
} from "@formweek/capacity-model";
import type { ExtraTeam } from "./scenario-change.ts";

type Shift = Pick<ExtraShift, "name" | "date" | "start" | "end">;

const MINUTE_SECONDS = 60;

/** Shifts know whole minutes: the last one that has begun. */
export const wholeMinute = (at: number): number => Math.floor(at / MINUTE_SECONDS) * MINUTE_SECONDS;

/** The plant with one more team, which has a calendar of its own with the spell in it; the plant itself where the other team is unknown. */
export function withTeam(plant: Plant, { likeTeamId, name, from, to }: Omit<ExtraTeam, "kind">): Plant {
  const like = plant.setterTeams.find(({ id }) => id === likeTeamId);
  if (like === undefined) return plant;
  const id = freeId(plant);
  const spell = { name, from: wholeMinute(from), to: wholeMinute(to) };
  const calendar = WorkCalendar.parse({
    id,
    name,
    shifts: [],
    extraShifts: shiftsOfSpell(plant.timeZone, spell),
  });
  const team = SetterTeam.parse({ id, name, calendarId: id, setters: like.setters });
  return {
    ...plant,
    calendars: [...plant.calendars, calendar],
    setterTeams: [...plant.setterTeams, team],
  };
}

/** A name that neither a calendar nor a team has. */
function freeId({ calendars, setterTeams }: Plant): string {
  const taken = new Set<string>([...calendars, ...setterTeams].map(({ id }) => id));
  for (let number = 1; ; number++) {
    const id = `extra-team-${number}`;
    if (!taken.has(id)) return id;
  }
}

interface Spell {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

/** The spell as shifts of the plant's clock, one a day. */
function shiftsOfSpell(timeZone: string, { name, from, to }: Spell): readonly Shift[] {
  const shifts: Shift[] = [];
  const clock = (at: number): string => localTextAt(timeZone, at).slice(11, 16);
  for (let day = localDayAt(timeZone, from); day <= localDayAt(timeZone, to - 1); day++) {
    const midnight = startOfLocalDay(timeZone, day + 1);
    const start = clock(Math.max(from, startOfLocalDay(timeZone, day)));
    // at or before its start a shift's end lies on the next day
    const isToMidnight = to >= midnight;
    const end = isToMidnight ? "00:00" : clock(to);
    // within the hour that the clocks show twice there is nothing to write down
    if (isToMidnight || end > start) shifts.push({ name, date: localDateText(day), start, end });
  }
  return shifts;
}
