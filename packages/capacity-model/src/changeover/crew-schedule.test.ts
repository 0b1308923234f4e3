import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { scheduleCrew } from "./crew-schedule.ts";
import type { CrewTask } from "./crew-schedule.ts";

function alone(seconds: readonly number[]): readonly CrewTask[] {
  return seconds.map((length, index) => ({
    key: `T${index}`,
    seconds: length,
    byTeam: true,
    after: [],
    first: false,
  }));
}

function makespan(seconds: readonly number[], setters: number): number {
  return Math.max(0, ...scheduleCrew(alone(seconds), setters).map(({ endSeconds }) => endSeconds));
}

/** Least makespan by trying every way of handing out the tasks. */
function leastMakespan(seconds: readonly number[], setters: number): number {
  let least = Number.POSITIVE_INFINITY;
  const loads = Array.from({ length: setters }, () => 0);
  const place = (index: number): void => {
    const length = seconds[index];
    if (length === undefined) {
      least = Math.min(least, Math.max(...loads));
      return;
    }
    for (let setter = 0; setter < setters; setter += 1) {
      loads[setter] = (loads[setter] ?? 0) + length;
      place(index + 1);
      loads[setter] = (loads[setter] ?? 0) - length;
    }
  };
  place(0);
  return least;
}

const tasks = fc
  .array(
    fc.record({
      seconds: fc.integer({ min: 0, max: 50 }),
      byTeam: fc.boolean(),
      first: fc.boolean(),
      earlier: fc.array(fc.nat(7), { maxLength: 3 }),
    }),
    { maxLength: 8 },
  )
  .map((rows): readonly CrewTask[] =>
    rows.map(({ earlier, ...row }, index) => ({
      ...row,
      key: `T${index}`,
      after: earlier.filter((other) => other < index).map((other) => `T${other}`),
    })),
  );

describe("sharing tasks among a crew", () => {
  it("CV-35 meets the bound of the longest-first rule where it is tight", () => {
    // Source: Graham's bound 4/3 - 1/(3m) for longest processing time first (from memory); optimum by trying every way.
    expect([makespan([5, 5, 4, 4, 3, 3, 3], 3), leastMakespan([5, 5, 4, 4, 3, 3, 3], 3)]).toEqual([11, 9]);
    expect([makespan([7, 7, 6, 6, 5, 5, 4, 4, 4], 4), leastMakespan([7, 7, 6, 6, 5, 5, 4, 4, 4], 4)]).toEqual(
      [15, 12],
    );
  });

  it("CV-56 makes the second of two machines wait for the one setter", () => {
    // Source: derived; both need 60 min at 08:00.
    const eight = 8 * 3600;
    const placed = scheduleCrew(alone([3600, 3600]), 1);
    expect(placed.map(({ startSeconds }) => (eight + startSeconds) / 3600)).toEqual([8, 9]);
    expect(placed.map(({ endSeconds }) => (eight + endSeconds) / 3600)).toEqual([9, 10]);
    expect(makespan([3600, 3600], 2)).toBe(3600);
  });

  it("never loads a setter twice, never starts a task before what it waits for, never idles for nothing", () => {
    fc.assert(
      fc.property(tasks, fc.integer({ min: 1, max: 4 }), (given, setters) => {
        const placed = scheduleCrew(given, setters);
        expect(new Set(placed.map(({ task }) => task.key))).toEqual(new Set(given.map(({ key }) => key)));
        expect(placed).toHaveLength(given.length);
        const endOf = new Map(placed.map(({ task, endSeconds }) => [task.key, endSeconds]));
        for (const { task, startSeconds, endSeconds } of placed) {
          expect(endSeconds - startSeconds).toBe(task.seconds);
          const ready = Math.max(0, ...task.after.map((key) => endOf.get(key) ?? Number.NaN));
          expect(startSeconds).toBeGreaterThanOrEqual(ready);
          if (!task.byTeam) expect(startSeconds).toBe(ready);
          // While a mechanical task waits though it could start, everybody is at work.
          for (let at = ready; task.byTeam && at < startSeconds; at += 1)
            expect(busyAt(placed, at)).toBe(setters);
        }
        for (let at = 0; at < 400; at += 1) expect(busyAt(placed, at)).toBeLessThanOrEqual(setters);
      }),
    );
  });

  it("stays within Graham's bound of the optimum", () => {
    // Source: Graham 1969, from memory: the longest-first rule needs at most 4/3 - 1/(3m) of the least time.
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 7 }),
        fc.integer({ min: 1, max: 3 }),
        (seconds, setters) => {
          const ratio = makespan(seconds, setters) / leastMakespan(seconds, setters);
          expect(ratio).toBeGreaterThanOrEqual(1);
          expect(ratio).toBeLessThanOrEqual(4 / 3 - 1 / (3 * setters) + 1e-9);
        },
      ),
    );
  });

  it("has nothing to share without tasks", () => {
    expect(scheduleCrew([], 2)).toEqual([]);
  });
});

function busyAt(placed: ReturnType<typeof scheduleCrew>, at: number): number {
  return placed.filter(
    ({ task, startSeconds, endSeconds }) => task.byTeam && startSeconds <= at && at < endSeconds,
  ).length;
}
