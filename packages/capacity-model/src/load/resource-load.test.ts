import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { workingTimeOf } from "../calendar/working-time.ts";
import { WHOLE_UNIT, orderLoads, resourceLoads } from "./resource-load.ts";
import type { LoadedResource, PlannedWork, ResourceKind, ResourceLoad, RoughWork } from "./resource-load.ts";
import { stepsOf } from "./steps.ts";

const LAST = 60;
const spell = { start: fc.nat(LAST), end: fc.nat(LAST) };
/** Units as each kind of resource has them: whole lines and teams, copies of moulds, heads in twentieths. */
const UNITS: Readonly<Record<ResourceKind, fc.Arbitrary<number>>> = {
  line: fc.constant(WHOLE_UNIT),
  team: fc.constant(WHOLE_UNIT),
  mould: fc.integer({ min: 1, max: 4 }).map((copies) => copies * WHOLE_UNIT),
  pool: fc.integer({ min: 0, max: 100 }).map((twentieths) => twentieths * 5),
};

function resourceOf(kind: ResourceKind): fc.Arbitrary<LoadedResource> {
  return UNITS[kind].chain((units) => {
    const amount = kind === "pool" ? fc.nat(20).map((twentieths) => twentieths * 5) : fc.constant(WHOLE_UNIT);
    const steps = fc.array(fc.record({ ...spell, amount }), { maxLength: 6 }).map(stepsOf);
    const planned = fc.record({
      ...spell,
      amount,
      kind: fc.constantFrom<PlannedWork["kind"]>("run", "change", "stop"),
      orderId: fc.constantFrom("A", "B", null),
    });
    const over = fc.array(fc.tuple(fc.nat(LAST), fc.nat(LAST)), { maxLength: 4 }).map(workingTimeOf);
    const rough = fc
      .record({
        kind: fc.constantFrom<RoughWork["kind"]>("run", "change"),
        amount: fc.nat(4000),
        over,
        from: fc.nat(LAST),
        length: fc.integer({ min: 1, max: LAST }),
        orderId: fc.constantFrom("C", "D"),
      })
      .map(({ length, ...work }): RoughWork => ({ ...work, to: work.from + length }));
    return fc.record({
      hours: fc.record({
        kind: fc.constant(kind),
        id: fc.constant("R"),
        units: fc.constant(units),
        open: steps,
        standing: steps,
      }),
      planned: fc.array(planned, { maxLength: 6 }),
      rough: fc.array(rough, { maxLength: 4 }),
    });
  });
}

const bucketsOf = (step: number, last = LAST) =>
  Array.from({ length: Math.ceil(last / step) }, (_, index) => ({
    label: String(index),
    start: index * step,
    end: (index + 1) * step,
  }));

const sum = (loads: readonly ResourceLoad[], pick: (load: ResourceLoad) => number): number =>
  loads.reduce((total, load) => total + pick(load), 0);

describe.each(["line", "mould", "team", "pool"] as const)("load and capacity of a %s", (kind) => {
  it("CV-60 conserves capacity in every bucket", () => {
    // Source: committed, available and unattainable capacity of ISA-95 / IEC 62264, from memory.
    fc.assert(
      fc.property(resourceOf(kind), fc.integer({ min: 1, max: 20 }), (resource, step) => {
        for (const load of resourceLoads(resource, bucketsOf(step))) {
          const parts = [load.run, load.change, load.stop, load.idle, load.closed];
          expect(Math.min(...parts, load.overload, load.outside)).toBeGreaterThanOrEqual(0);
          expect(parts.every((part) => Number.isSafeInteger(part))).toBe(true);
          expect(parts.reduce((total, part) => total + part, 0)).toBe(load.total);
          expect(load.committed + load.available + load.unattainable).toBe(load.total);
          expect(load.total).toBe(step * resource.hours.units);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("sorts the plan's seconds as a second-by-second oracle does", () => {
    fc.assert(
      fc.property(resourceOf(kind), (resource) => {
        const { hours, planned } = resource;
        resourceLoads({ ...resource, rough: [] }, bucketsOf(1)).forEach((load, second) => {
          const valueOf = ({ at, value }: typeof hours.open): number =>
            value[at.findLastIndex((start) => start <= second)] ?? 0;
          let left = Math.min(valueOf(hours.open), hours.units);
          expect(load.closed).toBe(hours.units - left);
          const fit = Math.max(0, Math.min(left, hours.units - valueOf(hours.standing)));
          const stands = left - fit;
          left = fit;
          const take = (wanted: PlannedWork["kind"]): number => {
            const asked = planned
              .filter(({ kind: each, start, end }) => each === wanted && start <= second && second < end)
              .reduce((total, { amount }) => total + amount, 0);
            const taken = Math.min(asked, left);
            left -= taken;
            return taken;
          };
          expect(load.run).toBe(take("run"));
          expect(load.change).toBe(take("change"));
          expect(load.stop).toBe(stands + take("stop"));
          expect(load.idle).toBe(left);
        });
      }),
    );
  });

  it("loses and doubles nothing of rough-cut work, whatever the size of the buckets", () => {
    fc.assert(
      fc.property(resourceOf(kind), fc.integer({ min: 1, max: 20 }), (resource, step) => {
        const fine = resourceLoads({ ...resource, planned: [] }, bucketsOf(1, 3 * LAST));
        const coarse = resourceLoads({ ...resource, planned: [] }, bucketsOf(step, 3 * LAST));
        const asked = resource.rough.reduce((total, { amount }) => total + amount, 0);
        const needed = (load: ResourceLoad): number => load.committed + load.overload;
        expect(sum(fine, needed)).toBe(asked);
        expect(sum(coarse, needed)).toBe(asked);
      }),
    );
  });

  it("names the orders that make up the load", () => {
    fc.assert(
      fc.property(resourceOf(kind), fc.integer({ min: 1, max: 20 }), (resource, step) => {
        const named = { ...resource, planned: resource.planned.filter(({ orderId }) => orderId !== null) };
        const crowded = resourceLoads(named, bucketsOf(step));
        bucketsOf(step).forEach((bucket, index) => {
          const load = crowded[index] as ResourceLoad;
          const orders = orderLoads(named, bucket).reduce(
            (total, { run, change }) => total + run + change,
            0,
          );
          expect(orders).toBe(load.committed + load.overload + load.outside);
        });
      }),
    );
  });
});

describe("load of a line", () => {
  const line = (more: Partial<LoadedResource>): LoadedResource => ({
    hours: {
      kind: "line",
      id: "L",
      units: WHOLE_UNIT,
      open: stepsOf([{ start: 0, end: 100, amount: WHOLE_UNIT }]),
      standing: stepsOf([{ start: 80, end: 90, amount: WHOLE_UNIT }]),
    },
    planned: [],
    rough: [],
    ...more,
  });
  const work = (kind: PlannedWork["kind"], start: number, end: number): PlannedWork => ({
    kind,
    start,
    end,
    amount: WHOLE_UNIT,
    orderId: "A",
  });
  const whole = [{ label: "all", start: 0, end: 150 }];

  it("counts a change on closed time apart", () => {
    const [load] = resourceLoads(line({ planned: [work("run", 0, 30), work("change", 90, 120)] }), whole);
    expect(load).toMatchObject({
      run: 3000,
      change: 1000,
      stop: 1000,
      idle: 5000,
      closed: 5000,
      outside: 2000,
      overload: 0,
      share: 40 / 90,
      basis: "planned",
    } satisfies Partial<ResourceLoad>);
  });

  it("puts rough-cut work beside the plan and says what has no room", () => {
    const over = workingTimeOf([[0, 80]]);
    const rough: RoughWork = { kind: "run", amount: 8000, over, from: 0, to: 80, orderId: "B" };
    const [first, last] = resourceLoads(line({ planned: [work("run", 0, 30)], rough: [rough] }), [
      { label: "first", start: 0, end: 40 },
      { label: "last", start: 40, end: 150 },
    ]);
    expect(first).toMatchObject({ run: 4000, idle: 0, overload: 3000, share: 70 / 40, basis: "both" });
    expect(last).toMatchObject({ run: 4000, idle: 1000, overload: 0, share: 40 / 50, basis: "rough-cut" });
  });

  it("has no share where the line can not work", () => {
    const shut = line({ planned: [] });
    const [load] = resourceLoads(shut, [{ label: "night", start: 100, end: 150 }]);
    expect(load).toMatchObject({ share: null, closed: 5000, basis: "none" });
  });
});
