import { tableReader, tableWriter } from "@formweek/adapters/tabular";
import { previewOrders, previewPlant, tableOfOrders, tablesOfPlant } from "@formweek/application";
import type { Table, TableLimits } from "@formweek/application";
import { Order, Plant } from "@formweek/capacity-model";
import { DEMO_WEEKS, demoOrders, demoPlant, generatePlant } from "@formweek/demo-plant";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const LIMITS: TableLimits = {
  maxFileBytes: 64 * 1024 * 1024,
  maxUnpackedBytes: 256 * 1024 * 1024,
  maxRowsPerTable: 100_000,
  maxColumns: 300,
  maxTables: 40,
  maxCellCharacters: 10_000,
};
const plant = demoPlant("full");

async function read(name: string, bytes: Uint8Array): Promise<readonly Table[]> {
  const result = await tableReader.read({ name, bytes }, LIMITS);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.tables;
}
const csvOf = async (tables: readonly Table[]): Promise<readonly Table[]> =>
  (await Promise.all(tables.map((table) => read(`${table.name}.csv`, tableWriter.csv(table))))).flat();
const xlsxOf = async (tables: readonly Table[]): Promise<readonly Table[]> =>
  read("all.xlsx", await tableWriter.xlsx(tables));

/** Orders as nastily named as the schema allows; due on whole minutes, as the file has them. */
const orderArb = fc
  .record({
    id: fc.stringMatching(/^[=+@'A-Za-z0-9 ;,"|-]{0,12}[A-Za-z0-9]$/),
    customer: fc.stringMatching(/^[=+@'A-Za-zäöüß ;,"|-]{0,20}[A-Za-z]$/),
    product: fc.nat(plant.products.length - 1),
    pieces: fc.integer({ min: 1, max: 1_000_000_000 }),
    dueMinute: fc.integer({ min: 0, max: 60_000 }),
    startMinute: fc.option(fc.integer({ min: 0, max: 60_000 })),
    weight: fc.integer({ min: 0, max: 1000 }),
    kind: fc.constantFrom("firm", "forecast"),
    tolerance: fc.integer({ min: 0, max: 100 }),
    partsAllowed: fc.boolean(),
  })
  .map((drawn) => {
    const start = 1_795_996_800;
    return Order.parse({
      ...drawn,
      productId: plant.products[drawn.product]?.id,
      dueAt: start + drawn.dueMinute * 60,
      earliestStartAt: drawn.startMinute === null ? null : start + drawn.startMinute * 60,
      underTolerance: drawn.tolerance / 100,
      overTolerance: drawn.tolerance / 100,
    });
  });
const bookArb = fc.uniqueArray(orderArb, { selector: ({ id }) => id, minLength: 1, maxLength: 12 });

describe("what is exported is loaded back unchanged", () => {
  it.each([
    ["CSV", csvOf],
    ["a workbook", xlsxOf],
  ] as const)("orders of any name, as %s", async (_, through) => {
    await fc.assert(
      fc.asyncProperty(bookArb, async (stored) => {
        const tables = await through([tableOfOrders(stored, plant.timeZone)]);
        const outcome = previewOrders({ tables, plant, stored, now: 0 });
        expect(outcome.faults.filter(({ severity }) => severity === "error")).toEqual([]);
        expect(outcome.counts).toEqual({ added: 0, changed: 0, unchanged: stored.length });
        expect(outcome.change).toEqual({ kind: "orders", change: { put: [], removeIds: [] } });
      }),
      { numRuns: 60 },
    );
  });

  it.each(DEMO_WEEKS)("the demo plant and its %s week", async (week) => {
    const stored = demoPlant(week);
    for (const through of [csvOf, xlsxOf]) {
      const onto = previewPlant({ tables: await through(tablesOfPlant(stored)), stored, plantId: stored.id });
      expect(onto.faults).toEqual([]);
      expect(onto.counts).toMatchObject({ added: 0, changed: 0 });
      const anew = previewPlant({
        tables: await through(tablesOfPlant(stored)),
        stored: null,
        plantId: null,
      });
      expect(anew.change).toEqual({ kind: "plant", plant: stored });
      const orders = demoOrders(week);
      const loaded = previewOrders({
        tables: await through([tableOfOrders(orders, stored.timeZone)]),
        plant: stored,
        stored: [],
        now: 0,
      });
      expect(loaded.counts.added).toBe(orders.length);
    }
  });

  it("a generated plant with a price on everything, service counters and added shifts", async () => {
    const { plant: drawn } = generatePlant({ lines: 12, orders: 60, seed: 3 });
    const prices = { ...drawn.prices, overtimePerHour: 35, earlyPerPalletHour: 0.25, balancePerHour: 2 };
    const moulds = drawn.moulds.map((mould, index) => ({
      ...mould,
      copies: 2,
      serviceAfterCycles: 50_000,
      cyclesSinceService: [[], [1200], [0, 48_000]][index % 3] ?? [],
    }));
    const addedShifts = drawn.lines.slice(0, 2).map(({ id }, index) => ({
      date: "2026-12-05",
      name: "Saturday",
      start: "22:00",
      end: "06:00",
      breaks: [{ start: "02:00", end: "02:30" }],
      lineIds: [id],
      teamIds: drawn.setterTeams.slice(0, index).map((team) => team.id),
      operators: drawn.operatorPools.slice(0, 1).map((pool) => ({ poolId: pool.id, heads: 0.55 + index })),
    }));
    const generated = Plant.parse({ ...drawn, prices, moulds, addedShifts });
    const outcome = previewPlant({
      tables: await csvOf(tablesOfPlant(generated)),
      stored: null,
      plantId: null,
    });
    expect(outcome.faults).toEqual([]);
    expect(outcome.change).toEqual({ kind: "plant", plant: generated });
  });
});

describe("an order file of 50,000 rows", () => {
  it("is read whole, and only its bad rows are left out", async () => {
    const some = demoOrders("full");
    const many = Array.from({ length: 50_000 }, (_, index) =>
      Order.parse({ ...some[index % some.length], id: `N${index}` }),
    );
    const table = tableOfOrders(many, plant.timeZone);
    const rows = table.rows.map((row, index) =>
      index > 0 && index % 1000 === 0 ? row.map((cell, column) => (column === 3 ? "none" : cell)) : row,
    );
    const outcome = previewOrders({ tables: await csvOf([{ ...table, rows }]), plant, stored: [], now: 0 });
    expect(outcome).toMatchObject({ rows: 50_000, bad: 50, counts: { added: 49_950 } });
    expect(outcome.faults).toHaveLength(50);
    expect(outcome.faults[0]).toMatchObject({ row: 1001, column: "pieces", value: "none" });
  });
});

describe("order files as planners have them", () => {
  const preview = async (text: string, stored: readonly Order[] = []) =>
    previewOrders({ tables: await read("w.csv", new TextEncoder().encode(text)), plant, stored, now: 0 });
  const product = plant.products[0]?.id ?? "";

  it("understands titles above the header, other names, decimal commas and days", async () => {
    const outcome = await preview(
      `Open orders week 49;;;;\n;;;;\nOrder No.;Article;Qty (pcs);Ship by;Priority\n4711;${product.toUpperCase()};185.000;04.12.2026;1,5\n\n`,
    );
    expect(outcome.faults).toEqual([]);
    // a due day means its end: midnight in Berlin is 23:00 UTC
    expect(outcome.change).toMatchObject({
      change: {
        put: [
          {
            id: "4711",
            productId: product,
            pieces: 185_000,
            weight: 1.5,
            dueAt: Date.UTC(2026, 11, 4, 23) / 1000,
          },
        ],
      },
    });
  });

  it("names row, column, value and remedy of everything that is wrong", async () => {
    const outcome = await preview(
      [
        "order,product,pieces,due,remarks",
        `1,${product},5,2026-12-04,x`,
        `1,${product},6,2026-12-04,`,
        "2,C70-66-80 naturel,5,2026-12-04,",
        `3,${product},0,2026-12-04,`,
        `4,${product},5,05/06/2026,`,
        `,${product},5,2026-12-04,`,
      ].join("\n"),
    );
    expect(outcome.bad).toBe(5);
    const errors = outcome.faults.filter(({ severity }) => severity === "error");
    expect(errors.map(({ row, column }) => [row, column])).toEqual([
      [3, "order"],
      [4, "product"],
      [5, "pieces"],
      [6, "due"],
      [7, "order"],
    ]);
    expect(errors.find(({ row }) => row === 4)?.remedy).toContain("C70-66-080 natural");
    expect(errors.every(({ problem, remedy }) => problem !== "" && remedy !== "")).toBe(true);
    expect(outcome.faults.find(({ severity }) => severity === "warning")).toMatchObject({
      column: "remarks",
    });
    expect(outcome.counts.added).toBe(1);
  });

  it("refuses a file without the columns that are needed, and says which", async () => {
    const outcome = await preview("order,when\n1,2\n");
    expect(outcome.change).toBeNull();
    expect(outcome.faults[0]?.problem).toContain('"product", "pieces", "due"');
  });

  it("tells what cannot be planned, with the reasons of the fit check, and still takes it", async () => {
    const tables = await read(
      "w.csv",
      new TextEncoder().encode(`order,product,pieces,due\n1,${product},5,2026-12-04\n`),
    );
    const narrow = { ...plant, lines: plant.lines.map((line) => ({ ...line, formingWidthMm: 300 })) };
    const outcome = previewOrders({ tables, plant: narrow, stored: [], now: 0 });
    expect(outcome.cannotBePlanned[0]).toMatchObject({ orderId: "1", row: 2 });
    expect(outcome.cannotBePlanned[0]?.reasons.map(({ text }) => text).join(" ")).toContain("300 mm");
    expect(outcome.counts.added).toBe(1);
  });
});

describe("plant files that do not hang together", () => {
  it("change nothing and name the row", async () => {
    const tables = tablesOfPlant(plant).map((table) =>
      table.name === "products"
        ? {
            ...table,
            rows: table.rows.map((row, index) =>
              index === 3 ? row.map((cell, column) => (column === 3 ? "no such sheet" : cell)) : row,
            ),
          }
        : table,
    );
    const outcome = previewPlant({ tables: await csvOf(tables), stored: plant, plantId: plant.id });
    expect(outcome.change).toBeNull();
    expect(outcome.faults[0]).toMatchObject({
      sheet: "products",
      row: 4,
      column: "sheet",
      value: "no such sheet",
      severity: "error",
    });
    expect(outcome.faults[0]?.remedy).not.toBe("");
  });

  it("name a record that stands twice", async () => {
    const tables = tablesOfPlant(plant).map((table) =>
      table.name === "sheets" ? { ...table, rows: [...table.rows, table.rows[1] ?? []] } : table,
    );
    const outcome = previewPlant({ tables: await xlsxOf(tables), stored: plant, plantId: plant.id });
    expect(outcome.change).toBeNull();
    expect(outcome.faults).toMatchObject([
      {
        sheet: "sheets",
        row: plant.sheets.length + 2,
        column: "sheet",
        value: plant.sheets[0]?.id,
        problem: "stands already in row 2",
      },
    ]);
  });

  it("name a child row without its record and a table that nobody knows", async () => {
    const tables = await csvOf([
      {
        name: "handling",
        rows: [
          ["line", "depth mm", "open s"],
          ["L99", 10, 1],
        ],
      },
      { name: "wishes", rows: [["a"], [1]] },
    ]);
    const outcome = previewPlant({ tables, stored: plant, plantId: plant.id });
    expect(outcome.change).toBeNull();
    expect(outcome.faults.map(({ sheet, severity }) => [sheet, severity])).toEqual([
      ["handling", "error"],
      ["wishes", "warning"],
    ]);
  });
});
