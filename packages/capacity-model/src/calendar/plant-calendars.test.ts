import { describe, expect, it } from "vitest";
import { line, mould } from "../changeover/change-examples.ts";
import { WorkCalendar } from "../plant/work-calendar.ts";
import {
  compilePlantCalendars,
  lineOvertime,
  lineWorkingTime,
  mouldOutOfService,
} from "./plant-calendars.ts";
import type { PlantTimes } from "./plant-calendars.ts";
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
};

describe("calendars of a plant", () => {
  it("takes a line's closures out of its calendar, extra shifts included", () => {
    const calendars = compilePlantCalendars(plant, window);
    expect(totalWorking(calendars.get(calendar.id)?.workingTime ?? NEVER_OPEN) / 3600).toBe(46);
    // 4 h on Tuesday, 2 h on Wednesday and 2 h on Saturday are lost.
    expect(totalWorking(lineWorkingTime(plant, line, calendars)) / 3600).toBe(46 - 4 - 2 - 2);
    expect(lineWorkingTime(plant, line, new Map())).toEqual(NEVER_OPEN);
  });

  it("takes a line's closures out of its overtime too", () => {
    const calendars = compilePlantCalendars(plant, window);
    expect(spellsOf(lineOvertime(plant, line, calendars))).toEqual([
      [at("2026-06-13T08:00"), at("2026-06-13T12:00")],
    ]);
    expect(lineOvertime(plant, line, new Map())).toEqual(NEVER_OPEN);
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
