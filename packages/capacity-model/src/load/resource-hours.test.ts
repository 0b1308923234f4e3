import { describe, expect, it } from "vitest";
import type { Plant } from "../plant/plant.ts";
import { plantHours } from "./resource-hours.ts";
import { WHOLE_UNIT } from "./resource-load.ts";
import type { ResourceHours } from "./resource-load.ts";

const DAY = Date.UTC(2026, 5, 8) / 1000; // a Monday
const HOUR = 3600;
const window = { start: DAY, end: DAY + 24 * HOUR };
const clock = (hour: number): number => DAY + hour * HOUR;
const calendar = (id: string, start: string, end: string) => ({
  id,
  shifts: [{ name: id, weekdays: [1], start, end, breaks: [] }],
  closures: [],
  extraShifts: [],
});

/** Only what hours are worked out from; everything else of the records plays no part in them. */
const plant = {
  timeZone: "UTC",
  calendars: [calendar("early", "06:00", "14:00"), calendar("long", "06:00", "22:00")],
  lineClosures: [{ lineId: "L1", from: "2026-06-08T08:00", to: "2026-06-08T09:00", reason: "Repair" }],
  addedShifts: [],
  lines: [
    { id: "L1", calendarId: "early" },
    { id: "L2", calendarId: "long" },
  ],
  moulds: [
    {
      id: "M",
      copies: 2,
      outOfService: [{ copy: 2, from: "2026-06-08T10:00", to: "2026-06-08T11:00", reason: "Service" }],
    },
    { id: "idle", copies: 1, outOfService: [] },
  ],
  setterTeams: [{ id: "T", calendarId: "early" }],
  operatorPools: [
    {
      id: "P",
      crews: [
        { calendarId: "early", heads: 3.5 },
        { calendarId: "long", heads: 2 },
      ],
    },
  ],
} as unknown as Plant;

const hours = plantHours(plant, window, new Map([["M", new Set(["L1", "L2"])]]));
const one = (kind: ResourceHours["kind"], id: string): ResourceHours => {
  const found = hours.of(kind).find((each) => each.id === id);
  if (found === undefined) throw new Error(`no ${kind} ${id}`);
  return found;
};
const changes = ({ at, value }: ResourceHours["open"]) =>
  at.map((instant, index) => [(instant - DAY) / HOUR, (value[index] ?? 0) / WHOLE_UNIT]);

describe("hours of a plant's resources", () => {
  it("opens a line by its calendar, and lets it stand by its own closures", () => {
    expect(changes(one("line", "L1").open)).toEqual([
      [6, 1],
      [14, 0],
    ]);
    expect(changes(one("line", "L1").standing)).toEqual([
      [8, 1],
      [9, 0],
    ]);
    expect(hours.line("L1").starts).toEqual([clock(6), clock(9)]);
    expect(hours.line("gone").starts).toEqual([]);
  });

  it("gives a mould as many copies as lines for it are open", () => {
    expect(one("mould", "M").units).toBe(2 * WHOLE_UNIT);
    expect(changes(one("mould", "M").open)).toEqual([
      [6, 2],
      [8, 1],
      [9, 2],
      [14, 1],
      [22, 0],
    ]);
    expect(changes(one("mould", "M").standing)).toEqual([
      [10, 1],
      [11, 0],
    ]);
    expect(changes(one("mould", "idle").open)).toEqual([]);
  });

  it("adds up heads, and counts the most at once as all that there are", () => {
    expect(one("pool", "P").units).toBe(5.5 * WHOLE_UNIT);
    expect(changes(one("pool", "P").open)).toEqual([
      [6, 5.5],
      [14, 2],
      [22, 0],
    ]);
    expect(changes(one("team", "T").open)).toEqual([
      [6, 1],
      [14, 0],
    ]);
  });
});
