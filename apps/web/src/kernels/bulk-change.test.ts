import { describe, expect, it } from "vitest";
import { madeOrder } from "../fixtures/made-order.ts";
import { bulkChanges } from "./bulk-change.ts";
import { bulkKinds, readBulk, valueOfBulk } from "./bulk-draft.ts";
import { zoneClock } from "./zone-clock.ts";

const clock = zoneClock("Europe/Paris");
const orders = [madeOrder(), madeOrder({ id: "O-2", earliestStartAt: "2026-12-01T05:00:00Z", weight: 3 })];

describe("a change of many orders", () => {
  it("moves due times by days, each from its own", () => {
    const changes = bulkChanges(orders, { kind: "due shifted", days: -2 }, clock);
    expect(changes.map(({ before }) => before)).toEqual(orders);
    expect(changes.map(({ after }) => after?.dueAt)).toEqual(Array(2).fill("2026-12-01T11:00:00Z"));
  });

  it("leaves out what is so already", () => {
    expect(bulkChanges(orders, { kind: "weight set", weight: 3 }, clock)).toEqual([
      { before: orders[0], after: { ...orders[0], weight: 3 } },
    ]);
    expect(bulkChanges(orders, { kind: "kind set", value: "firm" }, clock)).toEqual([]);
  });

  it("moves an earliest start only where there is one, and takes it away", () => {
    const moved = bulkChanges(orders, { kind: "earliest shifted", days: 1 }, clock);
    expect(moved.map(({ after }) => after?.earliestStartAt)).toEqual(["2026-12-02T05:00:00Z"]);
    const taken = bulkChanges(orders, { kind: "earliest set", at: null }, clock);
    expect(taken.map(({ after }) => after?.id)).toEqual(["O-2"]);
  });

  it("sets times and part deliveries, and removes", () => {
    const at = "2026-12-10T11:00:00Z";
    expect(bulkChanges(orders, { kind: "due set", at }, clock).map(({ after }) => after?.dueAt)).toEqual([
      at,
      at,
    ]);
    expect(bulkChanges(orders, { kind: "parts set", isAllowed: true }, clock)).toHaveLength(2);
    expect(bulkChanges(orders, { kind: "removed" }, clock).map(({ after }) => after)).toEqual([null, null]);
  });
});

describe("what is written for many orders", () => {
  it.each([
    ["due shifted", "3", { kind: "due shifted", days: 3 }],
    ["due shifted", "−2", { kind: "due shifted", days: -2 }],
    ["due set", "2026-12-10T12:00", { kind: "due set", at: "2026-12-10T11:00:00Z" }],
    ["earliest set", "", { kind: "earliest set", at: null }],
    ["weight set", "2,5", { kind: "weight set", weight: 2.5 }],
    ["kind set", "forecast", { kind: "kind set", value: "forecast" }],
    ["parts set", "no", { kind: "parts set", isAllowed: false }],
  ] as const)("%s %s", (kind, value, change) => expect(readBulk(kind, value, clock)).toEqual(change));

  it("is not taken where it cannot be read", () => {
    for (const kind of bulkKinds) expect(readBulk(kind, "some", clock), valueOfBulk(kind)).toBeNull();
    for (const days of ["0", "3.5", "4000", ""]) expect(readBulk("due shifted", days, clock)).toBeNull();
    expect(readBulk("due set", "", clock)).toBeNull();
    expect(readBulk("weight set", "1001", clock)).toBeNull();
  });
});
