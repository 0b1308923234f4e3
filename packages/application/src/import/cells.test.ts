import { describe, expect, it } from "vitest";
import { readBreaks, readCounts, readHeads, readWeekdays, readYesNo } from "./cell-list.ts";
import { readDecimal, readShare, readWhole } from "./cell-number.ts";
import { readLocalDateTime, readTimeOfDay, readWallClock } from "./cell-time.ts";
import type { Cell } from "../ports/table.ts";

const value = (reading: { readonly ok: boolean; readonly value?: unknown }): unknown =>
  reading.ok ? reading.value : "refused";

describe("numbers as planners write them", () => {
  it.each<[Cell, readonly number[] | "refused"]>([
    ["12000; 3,500", [12_000, 3500]],
    ["; 40;", [0, 40]],
    [250, [250]],
    [1.234, "refused"],
    ["10; few", "refused"],
  ])("reads %j as the counts %j", (cell, expected) => {
    expect(value(readCounts(cell))).toEqual(expected);
  });

  it.each<[Cell, unknown]>([
    [
      "packers/2; loaders / 0,5;",
      [
        { poolId: "packers", heads: 2 },
        { poolId: "loaders", heads: 0.5 },
      ],
    ],
    ["hall/2/1.5", [{ poolId: "hall/2", heads: 1.5 }]],
    ["packers", "refused"],
    ["/2", "refused"],
    ["packers/many", "refused"],
  ])("%s are the heads of pools %o", (cell, expected) => {
    expect(value(readHeads(cell))).toEqual(expected);
  });

  it.each<[Cell, number | "refused"]>([
    ["185000", 185_000],
    ["185,000", 185_000],
    ["185.000", 185_000],
    ["1.185.000", 1_185_000],
    ["185 000", 185_000],
    ["185\u00a0000", 185_000],
    ["1'185'000", 1_185_000],
    [185_000, 185_000],
    ["1.5", "refused"],
    ["12 pcs", "refused"],
    ["", "refused"],
    [Number.NaN, "refused"],
    ["1e999", "refused"],
    [true, "refused"],
    [{ kind: "error", text: "#REF!" }, "refused"],
    [{ kind: "formula", value: null }, "refused"],
  ])("reads %j as whole %j", (cell, expected) => {
    expect(value(readWhole(cell))).toBe(expected);
  });

  it.each<[Cell, number | "refused"]>([
    ["1.2", 1.2],
    ["1,2", 1.2],
    ["0,905", "refused"],
    ["1.234,5", 1234.5],
    ["1,234.5", 1234.5],
    ["1,234", "refused"],
    ["-3", -3],
    ["1,2,3", "refused"],
    [0.45, 0.45],
  ])("reads %j as decimal %j", (cell, expected) => {
    expect(value(readDecimal(cell))).toBe(expected);
  });

  it("tells both readings of an ambiguous number", () => {
    expect(readDecimal("1,234")).toMatchObject({ ok: false, remedy: "Write 1234 or 1.234." });
  });

  it.each<[Cell, number]>([
    ["5 %", 0.05],
    ["5", 0.05],
    [0.05, 0.05],
    ["2,5%", 0.025],
  ])("reads %j as share %j", (cell, expected) => {
    expect(value(readShare(cell))).toBeCloseTo(expected, 12);
  });
});

describe("dates as planners write them", () => {
  it.each<[Cell, unknown]>([
    ["2026-11-30", { date: "2026-11-30", time: null }],
    ["2026-11-30 14:00", { date: "2026-11-30", time: "14:00" }],
    ["2026-11-30T6:05", { date: "2026-11-30", time: "06:05" }],
    ["30.11.2026", { date: "2026-11-30", time: null }],
    ["30.11.2026 14:00:00", { date: "2026-11-30", time: "14:00" }],
    ["30/11/2026", { date: "2026-11-30", time: null }],
    ["11/30/2026", { date: "2026-11-30", time: null }],
    ["05/05/2026", { date: "2026-05-05", time: null }],
    ["05/06/2026", "refused"],
    ["2026-02-29", "refused"],
    ["2028-02-29", { date: "2028-02-29", time: null }],
    ["soon", "refused"],
    [
      { kind: "date", wallClock: "2026-11-30T05:00:00" },
      { date: "2026-11-30", time: "05:00" },
    ],
  ])("reads %j", (cell, expected) => {
    expect(value(readWallClock(cell))).toEqual(expected);
  });

  // 46356 = days from 1899-12-30 to 2026-11-30: the 1900 date system of spreadsheets as ECMA-376 part 1, 18.17.4.1 states it (from memory)
  it("takes a bare serial number for a date and says so", () => {
    expect(readWallClock(46_356.25)).toEqual({
      ok: true,
      value: { date: "2026-11-30", time: "06:00" },
      warning: expect.objectContaining({ problem: "was read as the date 2026-11-30" }) as unknown,
    });
    expect(value(readWallClock(12))).toBe("refused");
  });

  it("gives a day alone its first minute", () => {
    expect(value(readLocalDateTime("2026-11-30"))).toBe("2026-11-30T00:00");
  });

  it("reads times of day", () => {
    expect(value(readTimeOfDay("6:00"))).toBe("06:00");
    expect(value(readTimeOfDay(0.25))).toBe("06:00");
    expect(value(readTimeOfDay("24:00"))).toBe("refused");
  });
});

describe("lists as planners write them", () => {
  it("reads weekdays and ranges over the week's end", () => {
    expect(value(readWeekdays("Mon-Fri"))).toEqual([1, 2, 3, 4, 5]);
    expect(value(readWeekdays("Sun,Mon"))).toEqual([1, 7]);
    expect(value(readWeekdays("Fri-Sun"))).toEqual([5, 6, 7]);
    expect(value(readWeekdays("1-3; 5"))).toEqual([1, 2, 3, 5]);
    expect(value(readWeekdays("someday"))).toBe("refused");
  });

  it("reads breaks and yes or no", () => {
    expect(value(readBreaks("9:30-10:00; 12:00-12:30"))).toEqual([
      { start: "09:30", end: "10:00" },
      { start: "12:00", end: "12:30" },
    ]);
    expect(value(readBreaks("lunch"))).toBe("refused");
    expect([
      value(readYesNo("Yes")),
      value(readYesNo("x")),
      value(readYesNo("no")),
      value(readYesNo("maybe")),
    ]).toEqual([true, true, false, "refused"]);
  });
});
