import { describe, expect, it } from "vitest";
import { madeOrder } from "../fixtures/made-order.ts";
import { decimalIn, draftOf, readDraft, wholeIn, type OrderDraft } from "./order-draft.ts";
import { zoneClock } from "./zone-clock.ts";

const clock = zoneClock("Europe/Paris");
const order = madeOrder({ dueAt: "2026-12-03T11:00:30Z", weight: 1.5, underTolerance: 0.025 });
const read = (changes: Partial<OrderDraft>) =>
  readDraft(order, { ...draftOf(order, clock), ...changes }, clock);

describe("an order in a form", () => {
  it("is the same order when nothing was touched, seconds of its times too", () => {
    expect(read({})).toEqual({ kind: "read", terms: order });
  });

  it("is read field by field", () => {
    const changes = {
      customer: " Birch Dairy ",
      pieces: "36,000",
      dueAt: "2026-12-04T18:00",
      earliestStartAt: "2026-12-01T06:00",
      weight: "2,5",
      kind: "forecast",
      overTolerance: "10 %",
      partsAllowed: true,
    };
    expect(read(changes)).toEqual({
      kind: "read",
      terms: {
        ...order,
        customer: "Birch Dairy",
        pieces: 36_000,
        dueAt: "2026-12-04T17:00:00Z",
        earliestStartAt: "2026-12-01T05:00:00Z",
        weight: 2.5,
        kind: "forecast",
        overTolerance: 0.1,
        partsAllowed: true,
      },
    });
  });

  it("loses its earliest start when that is emptied", () => {
    const started = madeOrder({ earliestStartAt: "2026-12-01T05:00:00Z" });
    const draft = { ...draftOf(started, clock), earliestStartAt: "" };
    expect(readDraft(started, draft, clock)).toEqual({
      kind: "read",
      terms: { ...started, earliestStartAt: null },
    });
  });

  it.each([
    [{ customer: "  " }, ["customer"]],
    [{ pieces: "0" }, ["pieces"]],
    [{ pieces: "many", weight: "-1" }, ["pieces", "weight"]],
    [{ weight: "1001" }, ["weight"]],
    [{ dueAt: "" }, ["dueAt"]],
    [{ kind: "maybe" }, ["kind"]],
    [{ underTolerance: "101" }, ["underTolerance"]],
    [{ earliestStartAt: "2026-12-09T06:00" }, ["earliestStartAt"]],
  ])("names the fields that cannot be read: %j", (changes, fields) => {
    expect(read(changes)).toEqual({ kind: "faulty", fields });
  });

  it("names the due time where that was moved before the earliest start", () => {
    const started = madeOrder({ earliestStartAt: "2026-12-01T05:00:00Z" });
    const draft = { ...draftOf(started, clock), dueAt: "2026-11-30T06:00" };
    expect(readDraft(started, draft, clock)).toEqual({ kind: "faulty", fields: ["dueAt"] });
  });
});

describe("numbers as people write them", () => {
  it.each([
    ["40000", 40_000],
    ["40,000", 40_000],
    ["1.250.000", 1_250_000],
    ["40 000", 40_000],
    ["4,00", undefined],
    ["1,000.000", undefined],
    ["1e3", undefined],
    ["1000000001", undefined],
  ])("whole pieces: %s", (text, value) => expect(wholeIn(text)).toBe(value));

  it.each([
    ["1.5", 1.5],
    ["1,5", 1.5],
    ["2", 2],
    ["-1", undefined],
    ["", undefined],
  ])("decimals: %s", (text, value) => expect(decimalIn(text)).toBe(value));
});
