import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { instantOfLocalText } from "../calendar/time-zone.ts";
import { isOpen, workingTimeOf } from "../calendar/working-time.ts";
import { dayBuckets, shiftBuckets, weekBuckets } from "./buckets.ts";
import { lineLoads, sumOfLoads } from "./line-load.ts";
import type { LineLoad, LineTime, LoadSegment } from "./line-load.ts";

const PARIS = "Europe/Paris";
const at = (text: string): number => instantOfLocalText(PARIS, text) ?? Number.NaN;

const LAST = 60;
const time = fc.array(fc.tuple(fc.nat(LAST), fc.nat(LAST)), { maxLength: 5 }).map(workingTimeOf);
const segments = fc.array(
  fc.record({
    lineId: fc.constant("L"),
    kind: fc.constantFrom<LoadSegment["kind"]>("run", "change", "stop"),
    start: fc.nat(LAST),
    end: fc.nat(LAST),
  }),
  { maxLength: 6 },
);

describe("load and capacity", () => {
  it("CV-60 conserves capacity in every bucket", () => {
    // Source: committed, available and unattainable capacity of ISA-95 / IEC 62264, from memory.
    fc.assert(
      fc.property(
        time,
        time,
        segments,
        fc.integer({ min: 1, max: 20 }),
        (calendarTime, standstill, given, step) => {
          const buckets = Array.from({ length: Math.ceil(LAST / step) }, (_, index) => ({
            label: String(index),
            start: index * step,
            end: (index + 1) * step,
          }));
          for (const load of lineLoads([{ lineId: "L", calendarTime, standstill }], given, buckets)) {
            const parts = [
              load.runSeconds,
              load.changeSeconds,
              load.stopSeconds,
              load.idleSeconds,
              load.closedSeconds,
            ];
            expect(Math.min(...parts)).toBeGreaterThanOrEqual(0);
            expect(parts.reduce((sum, part) => sum + part, 0)).toBe(step);
            expect(load.committedSeconds + load.availableSeconds + load.unattainableSeconds).toBe(
              load.totalSeconds,
            );
            expect(load.totalSeconds).toBe(step);
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  it("sorts each second as a second-by-second oracle does", () => {
    fc.assert(
      fc.property(time, time, segments, (calendarTime, standstill, given) => {
        const line: LineTime = { lineId: "L", calendarTime, standstill };
        const buckets = Array.from({ length: LAST }, (_, second) => ({
          label: "",
          start: second,
          end: second + 1,
        }));
        lineLoads([line], given, buckets).forEach((load, second) => {
          const has = (kind: LoadSegment["kind"]): boolean =>
            given.some((segment) => segment.kind === kind && segment.start <= second && second < segment.end);
          const kind = !isOpen(calendarTime, second)
            ? "closedSeconds"
            : isOpen(standstill, second)
              ? "stopSeconds"
              : has("run")
                ? "runSeconds"
                : has("change")
                  ? "changeSeconds"
                  : has("stop")
                    ? "stopSeconds"
                    : "idleSeconds";
          expect(load[kind]).toBe(1);
        });
      }),
    );
  });

  it("counts a change on closed time apart, and a load share where the line can work", () => {
    const [load] = lineLoads(
      [{ lineId: "L", calendarTime: workingTimeOf([[0, 100]]), standstill: workingTimeOf([[80, 90]]) }],
      [
        { lineId: "L", kind: "run", start: 0, end: 30 },
        { lineId: "L", kind: "change", start: 90, end: 120 },
        { lineId: "other", kind: "run", start: 30, end: 90 },
      ],
      [{ label: "all", start: 0, end: 150 }],
    );
    expect(load).toMatchObject({
      runSeconds: 30,
      changeSeconds: 10,
      stopSeconds: 10,
      idleSeconds: 50,
      closedSeconds: 50,
      changeWhileClosedSeconds: 20,
      loadShare: 40 / 90,
    } satisfies Partial<LineLoad>);
  });

  it("adds lines up", () => {
    const bucket = { label: "b", start: 0, end: 10 };
    const open: LineTime = {
      lineId: "A",
      calendarTime: workingTimeOf([[0, 10]]),
      standstill: workingTimeOf([]),
    };
    const shut: LineTime = { lineId: "B", calendarTime: workingTimeOf([]), standstill: workingTimeOf([]) };
    const loads = lineLoads([open, shut], [{ lineId: "A", kind: "run", start: 0, end: 5 }], [bucket]);
    expect(sumOfLoads(loads, "plant")).toMatchObject({
      committedSeconds: 5,
      availableSeconds: 5,
      unattainableSeconds: 10,
      totalSeconds: 20,
    });
    expect(loads[1]?.loadShare).toBeNull();
    expect(sumOfLoads([], "plant")).toBeNull();
  });
});

describe("buckets", () => {
  it("cuts days and weeks by the wall clock, 23, 24 or 25 hours a day", () => {
    // Source: IANA time zone data, Europe/Paris, clock changes of 2026.
    const spring = dayBuckets(PARIS, { start: at("2026-03-28T12:00"), end: at("2026-03-31T00:00") });
    expect(spring.map(({ label, start, end }) => [label, (end - start) / 3600])).toEqual([
      ["2026-03-28", 24],
      ["2026-03-29", 23],
      ["2026-03-30", 24],
    ]);
    const weeks = weekBuckets(PARIS, { start: at("2026-10-21T00:00"), end: at("2026-10-27T00:00") }, 1);
    expect(weeks.map(({ label, start, end }) => [label, (end - start) / 3600])).toEqual([
      ["2026-W43", 169],
      ["2026-W44", 168],
    ]);
  });

  it("starts weeks on the plant's first weekday", () => {
    const [week] = weekBuckets(
      "UTC",
      { start: Date.UTC(2026, 5, 10) / 1000, end: Date.UTC(2026, 5, 11) / 1000 },
      7,
    );
    expect(week).toEqual({
      label: "2026-W24",
      start: Date.UTC(2026, 5, 7) / 1000,
      end: Date.UTC(2026, 5, 14) / 1000,
    });
  });

  it("leaves out a day that the zone skipped", () => {
    // Source: IANA time zone data; Samoa had no 30 December 2011.
    const window = { start: Date.UTC(2011, 11, 29, 12) / 1000, end: Date.UTC(2011, 11, 31, 9) / 1000 };
    expect(dayBuckets("Pacific/Apia", window).map(({ label }) => label)).toEqual([
      "2011-12-29",
      "2011-12-31",
    ]);
  });

  it("takes shifts as they are", () => {
    const shift = {
      name: "Night",
      kind: "weekly",
      date: "2026-06-08",
      start: 100,
      end: 200,
      workingSeconds: 90,
    } as const;
    expect(shiftBuckets([shift], { start: 150, end: 160 })).toEqual([
      { label: "2026-06-08 Night", start: 100, end: 200 },
    ]);
    expect(shiftBuckets([shift], { start: 200, end: 300 })).toEqual([]);
    expect(dayBuckets(PARIS, { start: 5, end: 5 })).toEqual([]);
    expect(weekBuckets(PARIS, { start: 5, end: 5 }, 1)).toEqual([]);
  });
});
