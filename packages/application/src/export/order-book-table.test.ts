import { Order } from "@formweek/capacity-model";
import { describe, expect, test } from "vitest";
import type { Cell } from "../ports/table.ts";
import type { BookedOrder } from "../queries/get-order-book.ts";
import { orderBookTable } from "./order-book-table.ts";

const order: BookedOrder = {
  ...Order.parse({
    id: "O-1",
    customer: "A customer",
    productId: "P-1",
    pieces: 1000,
    // 2026-11-30T05:00:00Z, by `date -u -d @1796014800`
    dueAt: 1_796_014_800,
    earliestStartAt: null,
    weight: 1,
    kind: "firm",
    underTolerance: 0,
    overTolerance: 0,
    partsAllowed: false,
  }),
  state: "late",
  finish: "2026-11-30T06:00:00Z",
  slackSeconds: -3600,
  fromStockPieces: 100,
  toMakePieces: 900,
  reasons: [],
};

const rowOf = (changes: Partial<BookedOrder>, language: "en" | "de" = "en") => {
  const names = new Map([["P-1", "A tub"]]);
  const [header = [], row = []] = orderBookTable(
    [{ ...order, ...changes }],
    { timeZone: "Europe/Berlin", productNames: names },
    language,
  ).rows;
  return Object.fromEntries<Cell | undefined>(
    header.map((title, at) => [typeof title === "string" ? title : "", row[at]]),
  );
};

describe("the order book as a table", () => {
  test("has what is ordered and what the plan says, in cells of their kind", () => {
    expect(rowOf({ earliestStartAt: 1_796_014_800 - 86_400 })).toEqual({
      order: "O-1",
      customer: "A customer",
      product: "P-1",
      "product name": "A tub",
      kind: "firm",
      pieces: 1000,
      "earliest start": { kind: "date", wallClock: "2026-11-29T06:00:00" },
      due: { kind: "date", wallClock: "2026-11-30T06:00:00" },
      state: "late",
      "planned finish": { kind: "date", wallClock: "2026-11-30T07:00:00" },
      "slack hours": -1,
      "covered by stock pieces": 100,
      "to make pieces": 900,
      "unplanned because": null,
      "time zone": "Europe/Berlin",
      "due with offset": "2026-11-30T06:00:00+01:00",
      "planned finish with offset": "2026-11-30T07:00:00+01:00",
    });
  });

  test("has headings, state and kind in the reader's language, names and figures as they are", () => {
    expect(rowOf({}, "de")).toMatchObject({
      Auftrag: "O-1",
      Kunde: "A customer",
      Art: "fest",
      Stück: 1000,
      Stand: "verspätet",
      Zeitzone: "Europe/Berlin",
    });
  });

  test("leaves empty what no plan says", () => {
    const open = { state: "not planned yet", finish: null, slackSeconds: null } as const;
    expect(rowOf({ ...open, fromStockPieces: null, toMakePieces: null })).toMatchObject({
      state: "not planned yet",
      "planned finish": null,
      "slack hours": null,
      "covered by stock pieces": null,
      "to make pieces": null,
    });
  });

  test("gives every reason of an order that is left out", () => {
    const reasons = ["No line takes it.", "Nobody is there."].map((text) => ({
      code: "no-line-fits",
      lineId: null,
      text,
    }));
    expect(rowOf({ state: "unplanned", finish: null, reasons })).toMatchObject({
      state: "unplanned",
      "unplanned because": "No line takes it. Nobody is there.",
    });
  });

  test("names the line of a reason, and says it in a few German words where its cause is known", () => {
    const cause = { kind: "does not fit", mouldId: "M-1", check: "polymer-on-line" } as const;
    const compared = { needed: "PP", has: ["PS"] };
    const reasons = [
      { code: "a", lineId: "L1", text: "It runs no PP.", cause: { ...cause, compared } },
      { code: "b", lineId: null, text: "Nobody is there." },
    ];
    expect(rowOf({ state: "unplanned", reasons })).toMatchObject({
      "unplanned because": "L1: It runs no PP. Nobody is there.",
    });
    expect(rowOf({ state: "unplanned", reasons }, "de")).toMatchObject({
      "nicht geplant, weil": "L1: Werkzeug passt nicht; Nobody is there.",
    });
  });
});
