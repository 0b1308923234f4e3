import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { PlanDocument, PlanSegment } from "@formweek/contracts";
import { madePlan } from "../fixtures/made-plan.ts";
import { boardPlan } from "./board-plan.ts";
import { lineSheet, type LineSheet, type SheetRow } from "./line-sheet.ts";
import { plantWeeks } from "./plant-weeks.ts";
import { zoneClock } from "./zone-clock.ts";

const berlin = zoneClock("Europe/Berlin");
const at = (iso: string): number => Date.parse(iso) / 1000;
const made = madePlan({ lines: 1, runsPerLine: 2, seed: 1 });
const runs = made.segments.filter((segment) => segment.kind === "run");
const aRun = runs[0]!;
const aChange = made.segments.find((segment) => segment.kind === "change")!;

/** Sheets of the only line for every week of a plan of these segments. */
function sheetsOf(
  segments: readonly PlanSegment[],
  closures: PlanDocument["lines"][number]["closures"] = [],
) {
  const lines = made.lines.map((line) => ({ ...line, closures }));
  const plan = boardPlan("p", { ...made, lines, segments: [...segments] });
  const [line] = plan.lines;
  return plantWeeks(berlin, plan).map((week) => lineSheet(berlin, line!, week));
}

const rowsOf = (sheet: LineSheet | undefined): readonly SheetRow[] =>
  sheet?.days.flatMap(({ rows }) => rows) ?? [];

describe("lineSheet", () => {
  it("shows a run over the end of a week on both sheets, each telling of the other", () => {
    // Sunday 22:00 to Monday 04:00 in the plant's zone, in the week whose Sunday has 23 hours.
    const [start, end] = ["2026-03-29T20:00:00Z", "2026-03-30T02:00:00Z"];
    const [before, after, ...more] = sheetsOf([{ ...aRun, start, end }]);
    expect(more).toEqual([]);
    expect(rowsOf(before)).toMatchObject([
      { start: at(start), end: at(end), begunAt: null, goesOnUntil: at(end), work: { isCut: true } },
    ]);
    expect(before?.days).toMatchObject([{ at: at("2026-03-28T23:00:00Z") }]);
    expect(rowsOf(after)).toMatchObject([
      { start: at(start), end: at(end), begunAt: at(start), goesOnUntil: null, work: { isCut: true } },
    ]);
    expect(after?.days).toMatchObject([{ at: at("2026-03-29T22:00:00Z") }]);
  });

  it("keeps what ends or begins at the week's own midnight on one sheet", () => {
    const midnight = "2026-03-29T22:00:00Z";
    const [before, after] = sheetsOf([
      { ...aRun, start: "2026-03-29T10:00:00Z", end: midnight },
      { ...aRun, orderId: "other", start: midnight, end: "2026-03-30T10:00:00Z" },
    ]);
    for (const sheet of [before, after])
      expect(rowsOf(sheet)).toMatchObject([{ begunAt: null, goesOnUntil: null, work: { isCut: false } }]);
  });

  it("tells of the rest of a lot that pauses over the weekend, once a sheet", () => {
    const lot = { orderId: aRun.orderId, lot: aRun.lot, lineId: aRun.lineId };
    const stop = { kind: "stop", reason: "closed", ...lot } as const;
    const [before, after] = sheetsOf([
      { ...aRun, start: "2026-12-03T08:00:00Z", end: "2026-12-03T12:00:00Z" },
      { ...stop, start: "2026-12-03T12:00:00Z", end: "2026-12-04T08:00:00Z" },
      { ...aRun, start: "2026-12-04T08:00:00Z", end: "2026-12-04T12:00:00Z" },
      { ...stop, start: "2026-12-04T12:00:00Z", end: "2026-12-07T05:00:00Z" },
      { ...aRun, start: "2026-12-07T05:00:00Z", end: "2026-12-07T09:00:00Z" },
    ]);
    expect(rowsOf(before).map(({ goesOnUntil }) => goesOnUntil)).toEqual([
      null,
      null,
      at("2026-12-07T09:00:00Z"),
      at("2026-12-07T05:00:00Z"),
    ]);
    expect(rowsOf(after).map(({ begunAt }) => begunAt)).toEqual([
      at("2026-12-04T12:00:00Z"),
      at("2026-12-03T08:00:00Z"),
    ]);
    expect(rowsOf(after)[1]?.work).toMatchObject({ kind: "run", isCut: false });
  });

  it("names the sheet material of a change only where it changes", () => {
    const times = [
      { start: "2026-12-01T08:00:00Z", end: "2026-12-01T10:00:00Z" },
      { start: "2026-12-01T10:00:00Z", end: "2026-12-01T10:40:00Z" },
      { start: "2026-12-01T10:40:00Z", end: "2026-12-01T12:00:00Z" },
    ] as const;
    const changeBetween = (from: string, to: string) =>
      rowsOf(
        sheetsOf([
          { ...aRun, ...times[0], sheetId: from },
          { ...aChange, ...times[1] },
          { ...aRun, ...times[2], orderId: "next", sheetId: to },
        ])[0],
      )[1]?.work;
    expect(changeBetween("PP", "PET")).toMatchObject({
      sheetOut: { sheetId: "PP" },
      sheetIn: { sheetId: "PET" },
    });
    expect(changeBetween("PP", "PP")).toMatchObject({ kind: "change", sheetOut: null, sheetIn: null });
  });

  it("puts dated closures among the work, by their start", () => {
    const closure = { start: "2026-12-01T09:00:00Z", end: "2026-12-01T11:00:00Z", reason: "oven repair" };
    const [sheet] = sheetsOf(
      [
        { ...aRun, start: "2026-12-01T07:00:00Z", end: "2026-12-01T09:00:00Z" },
        { ...aRun, orderId: "next", start: "2026-12-01T11:00:00Z", end: "2026-12-01T12:00:00Z" },
      ],
      [closure],
    );
    expect(rowsOf(sheet).map(({ work }) => work.kind)).toEqual(["run", "closure", "run"]);
  });

  it("has no day for a line without work in the week, closed or not", () => {
    const run = { ...aRun, start: "2026-12-01T07:00:00Z", end: "2026-12-01T09:00:00Z" };
    const closure = { start: "2026-12-02T07:00:00Z", end: "2026-12-02T09:00:00Z", reason: "oven repair" };
    const [busy] = sheetsOf([run], [closure]);
    expect(rowsOf(busy)).toHaveLength(2);
    const idle = { ...busy!.line, segments: [] };
    expect(lineSheet(berlin, idle, busy!.week).days).toEqual([]);
  });

  it("names the day whose first hour a clock change skips", () => {
    // Chile: from 24:00 of the first Saturday of September (2026-09-05, UTC-4) clocks go on one hour. Value from memory
    // of the IANA zone database, whose data the run time carries.
    const santiago = zoneClock("America/Santiago");
    const plan = boardPlan("p", {
      ...made,
      segments: [{ ...aRun, start: "2026-09-06T10:00:00Z", end: "2026-09-06T12:00:00Z" }],
    });
    const [week] = plantWeeks(santiago, plan);
    const [day] = lineSheet(santiago, plan.lines[0]!, week!).days;
    expect(santiago.wallTimeAt(day!.at)).toMatchObject({ day: 6, hour: 1, weekday: 7 });
  });

  it("puts every piece of work on the sheet of each week it touches, and on no other", () => {
    fc.assert(
      fc.property(
        fc.record({
          lines: fc.integer({ min: 1, max: 3 }),
          runsPerLine: fc.integer({ min: 1, max: 40 }),
          seed: fc.nat(9999),
        }),
        fc.constantFrom("Europe/Berlin", "America/New_York", "Pacific/Apia", "Asia/Kolkata"),
        (size, zone) => {
          const clock = zoneClock(zone);
          const plan = boardPlan("p", madePlan(size));
          const weeks = plantWeeks(clock, plan);
          for (const line of plan.lines) {
            for (const week of weeks) {
              const shown = rowsOf(lineSheet(clock, line, week)).map(({ key }) => key);
              const touching = line.segments.filter(
                ({ start, end }) => Math.min(end, week.endAt) - Math.max(start, week.startAt) > 0,
              );
              expect(shown).toEqual(touching.map(({ index }) => `${index}`));
            }
          }
        },
      ),
      { numRuns: 30 },
    );
  });
});
