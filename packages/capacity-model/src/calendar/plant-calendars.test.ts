import { describe, expect, it } from "vitest";
import { line, mould } from "../changeover/change-examples.ts";
import { AddedShift } from "../plant/added-shift.ts";
import { OperatorPool, SetterTeam } from "../plant/crew.ts";
import { WorkCalendar } from "../plant/work-calendar.ts";
import {
  compilePlantCalendars,
  lineOvertime,
  lineWorkingTime,
  mouldOutOfService,
  poolCrews,
  teamWorkingTime,
} from "./plant-calendars.ts";
import type { PlantTimes } from "./plant-calendars.ts";
import { LineId } from "../plant/scalars.ts";
import { instantOfLocalText } from "./time-zone.ts";
import { NEVER_OPEN, spellsOf, totalWorking } from "./working-sets.ts";

const ZONE = "Europe/Berlin";
const at = (text: string): number => instantOfLocalText(ZONE, text) ?? Number.NaN;
const window = { start: at("2026-06-08T00:00"), end: at("2026-06-15T00:00") };

const calendar = WorkCalendar.parse({
  id: "C",
  name: "Days",
  shifts: [{ name: "Day", weekdays: [1, 2, 3, 4, 5], start: "06:00", end: "14:00" }],
  extraShifts: [{ name: "Saturday", date: "2026-06-13", start: "06:00", end: "12:00" }],
});
const plant: PlantTimes = {
  timeZone: ZONE,
  calendars: [calendar],
  lineClosures: [
    { lineId: line.id, from: "2026-06-09T10:00", to: "2026-06-10T08:00", reason: "Breakdown" },
    { lineId: line.id, from: "2026-06-13T06:00", to: "2026-06-13T08:00", reason: "Cleaning" },
  ],
  addedShifts: [],
};

describe("calendars of a plant", () => {
  it("takes a line's closures out of its calendar, extra shifts included", () => {
    const calendars = compilePlantCalendars(plant, window);
    expect(totalWorking(calendars.byId.get(calendar.id)?.workingTime ?? NEVER_OPEN) / 3600).toBe(46);
    // 4 h on Tuesday, 2 h on Wednesday and 2 h on Saturday are lost.
    expect(totalWorking(lineWorkingTime(plant, line, calendars)) / 3600).toBe(46 - 4 - 2 - 2);
    expect(lineWorkingTime(plant, line, { byId: new Map(), added: [] })).toEqual(NEVER_OPEN);
  });

  it("takes a line's closures out of its overtime too", () => {
    const calendars = compilePlantCalendars(plant, window);
    expect(spellsOf(lineOvertime(plant, line, calendars))).toEqual([
      [at("2026-06-13T08:00"), at("2026-06-13T12:00")],
    ]);
    expect(lineOvertime(plant, line, { byId: new Map(), added: [] })).toEqual(NEVER_OPEN);
  });

  it("adds a shift to the lines and people that it names, and to nobody else of their calendars", () => {
    const shift = AddedShift.parse({
      date: "2026-06-13",
      name: "Saturday",
      start: "10:00",
      end: "18:00",
      breaks: [{ start: "14:00", end: "14:30" }],
      lineIds: [line.id],
      teamIds: ["A"],
      operators: [{ poolId: "O", heads: 1.5 }],
    });
    const added = { ...plant, lineClosures: [], addedShifts: [shift] };
    const calendars = compilePlantCalendars(added, window);
    const other = { ...line, id: LineId.parse("other") };
    const saturday = [
      [at("2026-06-13T10:00"), at("2026-06-13T14:00")],
      [at("2026-06-13T14:30"), at("2026-06-13T18:00")],
    ];
    expect(spellsOf(lineWorkingTime(added, line, calendars)).slice(5)).toEqual([
      [at("2026-06-13T06:00"), at("2026-06-13T14:00")],
      saturday[1],
    ]);
    expect(spellsOf(lineOvertime(added, line, calendars))).toEqual([
      [at("2026-06-13T06:00"), at("2026-06-13T14:00")],
      saturday[1],
    ]);
    expect(lineWorkingTime(added, other, calendars)).toEqual(calendars.byId.get(calendar.id)?.workingTime);
    const team = (id: string) => SetterTeam.parse({ id, name: id, calendarId: "C", setters: 1 });
    expect(totalWorking(teamWorkingTime(team("A"), calendars)) / 3600).toBe(46 + 2 + 3.5);
    expect(totalWorking(teamWorkingTime(team("B"), calendars)) / 3600).toBe(46);
    const pool = (id: string) => OperatorPool.parse({ id, name: id, crews: [{ calendarId: "C", heads: 4 }] });
    expect(
      poolCrews(pool("O"), calendars).map(({ heads, workingTime }) => [heads, spellsOf(workingTime)]),
    ).toEqual([
      [4, spellsOf(calendars.byId.get(calendar.id)?.workingTime ?? NEVER_OPEN)],
      [1.5, saturday],
    ]);
    expect(poolCrews(pool("P"), calendars)).toHaveLength(1);
  });

  it.each([
    ["2026-10-24", 9],
    ["2027-03-27", 7],
    ["2027-03-20", 8],
  ])("gives the added night of %s the %i hours that the clocks leave it", (date, hours) => {
    const night = { date, name: "Night", start: "22:00", end: "06:00", breaks: [], operators: [] };
    const shift = AddedShift.parse({ ...night, lineIds: [line.id], teamIds: [] });
    const around = { start: at(`${date}T12:00`), end: at(`${date}T12:00`) + 86_400 };
    const added = { ...plant, calendars: [], lineClosures: [], addedShifts: [shift] };
    const calendars = compilePlantCalendars(added, around);
    expect(totalWorking(lineWorkingTime(added, line, calendars)) / 3600).toBe(hours);
    const cut = compilePlantCalendars(added, { start: around.start, end: at(`${date}T23:00`) });
    expect(totalWorking(lineWorkingTime(added, line, cut)) / 3600).toBe(1);
  });

  it("spreads a spell out of service over the copies it means", () => {
    const spells = [
      { copy: null, from: "2026-06-09T00:00", to: "2026-06-10T00:00", reason: "Wash" },
      { copy: 2, from: "2026-06-09T12:00", to: "2026-06-11T00:00", reason: "Repair" },
    ];
    expect(mouldOutOfService(mould("A", { copies: 2, outOfService: spells }), ZONE)).toEqual([
      { copy: 0, start: at("2026-06-09T00:00"), end: at("2026-06-10T00:00") },
      { copy: 1, start: at("2026-06-09T00:00"), end: at("2026-06-11T00:00") },
    ]);
  });
});
