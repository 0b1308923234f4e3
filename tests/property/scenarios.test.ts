import {
  applyScenario,
  assembleProblem,
  listChanges,
  scenarioFaults,
  withListChanges,
  type PlanningSnapshot,
  type ScenarioChange,
  type ScenarioGround,
} from "@formweek/application";
import { Plant, orderFaults, plantFaults } from "@formweek/capacity-model";
import { demoOrders, demoPlant } from "@formweek/demo-plant";
import { validateProblem } from "@formweek/scheduler";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const plant = Plant.parse(demoPlant("breakdown"));
const orders = demoOrders("breakdown")
  .slice(0, 8)
  .toSorted((a, b) => a.dueAt - b.dueAt || (a.id < b.id ? -1 : 1));
const snapshot: PlanningSnapshot = {
  plant,
  orders,
  bookRevision: 1,
  heldOrderIds: new Set(),
  stockShares: [],
  pins: [],
};
const { horizon } = assembleProblem({ ...snapshot, now: 0 }).problem;
const frozenRuns = [
  { orderId: orders[3]?.id ?? "", lineId: "L2", start: horizon.start + 3600, end: horizon.start + 9 * 3600 },
];
const ground: ScenarioGround = { snapshot, horizon, frozenRuns };

const oneOf = (ids: readonly string[]): fc.Arbitrary<string> =>
  fc.oneof(
    { arbitrary: fc.constantFrom(...ids), weight: 12 },
    { arbitrary: fc.constant("nobody"), weight: 1 },
  );
const line = oneOf(plant.lines.map(({ id }) => id));
const mould = oneOf(plant.moulds.map(({ id }) => id));
const order = oneOf(orders.map(({ id }) => id));
const product = oneOf(plant.products.map(({ id }) => id));
/** In the plan, and some days before and after it. */
const at = fc.integer({ min: -5 * 96, max: 47 * 96 }).map((quarters) => horizon.start + quarters * 900);
const local = (instant: number): string => new Date(instant * 1000).toISOString().slice(0, 16);
const clock = fc.constantFrom("00:00", "06:00", "14:00", "22:00", "23:45");

const change: fc.Arbitrary<ScenarioChange> = fc.oneof(
  fc
    .record({ lineId: line, from: at, hours: fc.integer({ min: -2, max: 60 }) })
    .map(({ lineId, from, hours }) => ({
      kind: "close line" as const,
      closure: { lineId, from: local(from), to: local(from + hours * 3600), reason: "Repair" },
    })),
  fc
    .record({ from: at, start: clock, end: clock, lineId: line, heads: fc.integer({ min: 0, max: 3 }) })
    .map(({ from, start, end, lineId, heads }) => ({
      kind: "add shift" as const,
      shift: {
        date: local(from).slice(0, 10),
        name: "Extra",
        start,
        end,
        breaks: [],
        lineIds: [lineId],
        teamIds: ["setters-A"],
        operators: heads === 0 ? [] : [{ poolId: "operators", heads }],
      },
    })),
  fc.record({
    kind: fc.constant("more copies" as const),
    mouldId: mould,
    more: fc.integer({ min: 1, max: 5 }),
  }),
  fc
    .record({
      likeTeamId: oneOf(plant.setterTeams.map(({ id }) => id)),
      name: fc.constantFrom("Third team", "", "Fourth"),
      from: at,
      hours: fc.oneof(
        { arbitrary: fc.integer({ min: 1, max: 200 }), weight: 8 },
        fc.integer({ min: -9, max: 9000 }),
      ),
    })
    .map(({ likeTeamId, name, from, hours }) => ({
      kind: "another team" as const,
      likeTeamId,
      name,
      from,
      to: from + hours * 3600 + 30,
    })),
  fc.record({ kind: fc.constant("cancel order" as const), orderId: order }),
  fc
    .record({
      id: fc.constantFrom("RUSH-1", "RUSH-2", "RUSH-3", orders[0]?.id ?? ""),
      productId: product,
      pieces: fc.constantFrom(0, 1, 2.5, 10_000, 400_000, 1_000_000_000),
      dueAt: at,
      earliestStartAt: fc.option(at),
      partsAllowed: fc.boolean(),
    })
    .map((terms) => ({
      kind: "rush order" as const,
      order: {
        ...terms,
        customer: "Somebody",
        weight: 2,
        kind: "firm",
        underTolerance: 0,
        overTolerance: 0,
      },
    })),
  fc.record({
    kind: fc.constant("change order" as const),
    orderId: order,
    pieces: fc.option(fc.constantFrom(0, 1, 55_555, 2_000_000, 1_000_000_001)),
    dueAt: fc.option(at),
  }),
  fc.record({
    kind: fc.constant("cycle rate" as const),
    lineId: line,
    mouldId: mould,
    cyclesPerMin: fc.oneof(fc.double({ min: 0.1, max: 30, noNaN: true }), fc.constantFrom(0, -1, 1e6)),
  }),
);
const changes = fc.array(change, { maxLength: 8 });

const placeOf = (path: string): number => Number(/^changes\.(\d+)\./.exec(path)?.[1] ?? Number.NaN);

describe("a scenario", () => {
  it("without changes is the same inputs, and so the same problem", () => {
    expect(scenarioFaults([], ground)).toEqual([]);
    expect(JSON.stringify(applyScenario(snapshot, []))).toBe(JSON.stringify(snapshot));
  });

  it("of any changes gives a plant, a book and a problem without faults, or has its faults named in words and apart from them", () => {
    const seen = { sound: 0, faulty: 0 };
    fc.assert(
      fc.property(changes, (list) => {
        const faults = scenarioFaults(list, ground);
        for (const { path, problem, remedy, cause } of faults) {
          expect(placeOf(path)).toBeLessThan(list.length);
          expect(problem).toMatch(/\S.*\.$/);
          expect(remedy).toMatch(/\S.*\.$/);
          expect(cause).toBeDefined();
        }
        const faulty = new Set(faults.map(({ path }) => placeOf(path)));
        const rest = list.filter((_, place) => !faulty.has(place));
        expect(scenarioFaults(rest, ground)).toEqual([]);
        const changed = applyScenario(snapshot, rest);
        expect(Plant.parse(changed.plant)).toEqual(changed.plant);
        expect(plantFaults(changed.plant)).toEqual([]);
        expect(orderFaults(changed.orders, changed.plant)).toEqual([]);
        expect(validateProblem(assembleProblem({ ...changed, now: 0 }).problem)).toEqual([]);
        seen[faults.length === 0 ? "sound" : "faulty"]++;
      }),
      { numRuns: 60 },
    );
    expect(Math.min(seen.sound, seen.faulty)).toBeGreaterThan(8);
  });

  it("leaves what it was applied to alone, and its changes of the plant's lists lead there and back, byte for byte", () => {
    const before = JSON.stringify(snapshot.plant);
    let changed = 0;
    fc.assert(
      fc.property(changes, (list) => {
        const faulty = new Set(scenarioFaults(list, ground).map(({ path }) => placeOf(path)));
        const { plant: after } = applyScenario(
          snapshot,
          list.filter((_, place) => !faulty.has(place)),
        );
        expect(JSON.stringify(snapshot.plant)).toBe(before);
        const [forth, back] = [listChanges(plant, after), listChanges(after, plant)];
        changed += forth.length;
        const there = withListChanges(plant, forth);
        expect(JSON.stringify(there.ok && there.value)).toBe(JSON.stringify(after));
        const here = withListChanges(after, back);
        expect(JSON.stringify(here.ok && here.value)).toBe(before);
      }),
      { numRuns: 100 },
    );
    expect(changed).toBeGreaterThan(50);
  });
});
