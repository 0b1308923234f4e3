import { describe, expect, test } from "vitest";
import type { DocumentChange, DocumentRun, PlanDocument } from "../planning/plan-document.ts";
import type { Cell } from "../ports/table.ts";
import { planTable } from "./plan-table.ts";

const run: DocumentRun = {
  kind: "run",
  lineId: "L2",
  start: "2026-11-30T05:00:00Z",
  end: "2026-11-30T06:30:00Z",
  orderId: "O-1",
  lot: 0,
  productId: "P-1",
  productName: "A tub",
  customer: "A customer",
  mould: { mouldId: "M-1", copy: 2 },
  mouldName: "A mould",
  sheetId: "S-1",
  sheetName: "White sheet",
  colour: { name: "white", hex: "#ffffff", clear: false },
  setupId: "M-1 white",
  pieces: 9000,
  due: "2026-11-30T08:00:00Z",
  lateSeconds: 0,
};
const change: DocumentChange = {
  kind: "change",
  lineId: "L2",
  start: "2026-11-30T04:00:00Z",
  mountStart: "2026-11-30T04:30:00Z",
  tailStart: "2026-11-30T04:50:00Z",
  end: "2026-11-30T05:00:00Z",
  stripping: false,
  teamId: "T-1",
  trolleyId: null,
  fromSetupId: null,
  toSetupId: "M-1 white",
  mouldOut: null,
  mouldIn: null,
  minutes: 60.1,
  scrapKg: 0,
  tasks: [],
};
const line = { open: [], closures: [] };
const utilisation = { runSeconds: 0, changeSeconds: 0, stopSeconds: 0, idleSeconds: 0, closedSeconds: 0 };

const planOf = (changes: Partial<PlanDocument>): PlanDocument =>
  ({
    plant: { id: "plant", name: "Plant", timeZone: "Europe/Berlin", currency: "EUR" },
    lines: ["L2", "L1"].map((id) => ({ ...line, utilisation, id, name: `Line ${id}` })),
    lots: [],
    ...changes,
  }) as PlanDocument;

const rowsOf = (plan: PlanDocument, teams: readonly (readonly [string, string])[] = []) => {
  const [header = [], ...rows] = planTable(plan, new Map(teams), "en").rows;
  return rows.map((row) =>
    Object.fromEntries<Cell | undefined>(
      header.map((title, at) => [typeof title === "string" ? title : "", row[at]]),
    ),
  );
};
const clock = (wallClock: string): Cell => ({ kind: "date", wallClock });

describe("a plan as a table", () => {
  test("has every figure of a run in a cell of its kind", () => {
    const lot = { ...run, finish: "2026-11-30T07:30:01Z" };
    const late = { ...run, lateSeconds: 5401 };
    expect(rowsOf(planOf({ segments: [change, late], lots: [lot] }), [["T-1", "Early setters"]])).toEqual([
      {
        order: "O-1",
        lot: 1,
        customer: "A customer",
        product: "P-1",
        "product name": "A tub",
        line: "L2",
        "line name": "Line L2",
        mould: "M-1",
        "mould copy": 2,
        "mould name": "A mould",
        sheet: "S-1",
        "sheet name": "White sheet",
        pieces: 9000,
        // one hour ahead of UTC in winter
        start: clock("2026-11-30T06:00:00"),
        end: clock("2026-11-30T07:30:00"),
        "lot finish": clock("2026-11-30T08:30:01"),
        due: clock("2026-11-30T09:00:00"),
        "order hours late": 1.5003,
        "change before min": 60.1,
        "setter team": "Early setters",
        "time zone": "Europe/Berlin",
        "start with offset": "2026-11-30T06:00:00+01:00",
        "end with offset": "2026-11-30T07:30:00+01:00",
        "lot finish with offset": "2026-11-30T08:30:01+01:00",
        "due with offset": "2026-11-30T09:00:00+01:00",
      },
    ]);
  });

  // Directive 2000/84/EC: clocks go back on the last Sunday of October at 01:00 UTC.
  test("tells the two equal hours of the autumn clock change apart by their offset (RFC 3339)", () => {
    const twice = { ...run, start: "2026-10-25T00:30:00Z", end: "2026-10-25T01:30:00Z" };
    expect(rowsOf(planOf({ segments: [twice] }))).toMatchObject([
      {
        start: clock("2026-10-25T02:30:00"),
        end: clock("2026-10-25T02:30:00"),
        "start with offset": "2026-10-25T02:30:00+02:00",
        "end with offset": "2026-10-25T02:30:00+01:00",
      },
    ]);
  });

  test("goes by line as the board does, then by start", () => {
    const early = { ...run, lineId: "L1", start: "2026-11-29T05:00:00Z", orderId: "O-9" };
    const later = { ...run, start: "2026-11-30T07:00:00Z", orderId: "O-2" };
    const shown = rowsOf(planOf({ segments: [early, run, later] }));
    expect(shown.map(({ line: lineId, order }) => [lineId, order])).toEqual([
      ["L2", "O-1"],
      ["L2", "O-2"],
      ["L1", "O-9"],
    ]);
  });

  test("adds up the changes since the line's last run, and only those", () => {
    const stripped = { ...change, teamId: "T-2", minutes: 30.2, stripping: true };
    const byNobody = { ...change, teamId: null, minutes: 5 };
    const elsewhere = { ...change, lineId: "L1", minutes: 400 };
    const again = { ...run, start: "2026-11-30T07:00:00Z" };
    const shown = rowsOf(planOf({ segments: [elsewhere, stripped, change, byNobody, run, again] }));
    expect(shown.map((row) => [row["change before min"], row["setter team"]])).toEqual([
      // an id stands for a team that the plant does not know any more
      [95.3, "T-2; T-1"],
      [0, null],
    ]);
  });

  test("leaves empty what a plan does not know, and has a header with no runs", () => {
    const bare = { ...run, customer: "", mould: null, mouldName: "", sheetId: "", sheetName: "" };
    const empty = { customer: null, mould: null, "mould copy": null, "mould name": null, sheet: null };
    expect(rowsOf(planOf({ segments: [bare] }))[0]).toMatchObject({ ...empty, "lot finish": null });
    expect(planTable(planOf({ segments: [] }), new Map(), "en").rows).toHaveLength(1);
  });

  test("has other headings in German, each its own, over the same rows", () => {
    const english = planTable(planOf({ segments: [run] }), new Map(), "en").rows;
    const german = planTable(planOf({ segments: [run] }), new Map(), "de").rows;
    const [heads = []] = german;
    expect(heads.slice(0, 4)).toEqual(["Auftrag", "Los", "Kunde", "Artikel"]);
    expect(new Set(heads).size).toBe(english[0]?.length);
    expect(german.slice(1)).toEqual(english.slice(1));
  });

  test("shows the plant's clock on both sides of a clock change", () => {
    // clocks of the EU go back on the last Sunday of October at 01:00 UTC (directive 2000/84/EC, from memory)
    const night = { ...run, start: "2026-10-25T00:59:59Z", end: "2026-10-25T02:00:00Z" };
    expect(rowsOf(planOf({ segments: [night] }))[0]).toMatchObject({
      start: clock("2026-10-25T02:59:59"),
      end: clock("2026-10-25T03:00:00"),
    });
  });
});
