import { describe, expect, it } from "vitest";
import type { z } from "zod";
import { line, mould, polymers, product, rules, white } from "../changeover/change-examples.ts";
import { Order } from "./order.ts";
import { orderFaults, plantFaults } from "./plant-faults.ts";
import { Plant } from "./plant.ts";

type PlantInput = z.input<typeof Plant>;

const calendar = {
  id: "C",
  name: "Days",
  shifts: [{ name: "Day", weekdays: [1, 2, 3, 4, 5], start: "06:00", end: "14:00" }],
};
const nothingMounted = line.mounted;
const mouldA = mould("A", { inserts: ["i1"], copies: 2 });

/** A plant without a fault; each test spoils one thing. */
const sound: PlantInput = {
  id: "P",
  name: "Plant",
  timeZone: "Europe/Berlin",
  currency: "EUR",
  firstWeekday: 1,
  planFrom: "2026-06-08T06:00",
  horizonWeeks: 4,
  calendars: [calendar],
  lines: [{ ...line, trolleyId: "T1", operatorPoolId: "O" }],
  lineClosures: [{ lineId: "L1", from: "2026-06-09T06:00", to: "2026-06-09T14:00", reason: "Breakdown" }],
  moulds: [mouldA],
  polymers,
  sheets: [white],
  products: [{ ...product, moulds: [{ mouldId: "A", insertId: "i1" }] }],
  provenRates: [
    { lineId: "L1", mouldId: "A", productId: "P", cyclesPerMin: 30, reports: 3, spreadCyclesPerMin: 0.5 },
  ],
  setterTeams: [{ id: "S", name: "Setters", calendarId: "C", setters: 2 }],
  trolleys: [{ id: "T1", name: "Trolley" }],
  operatorPools: [{ id: "O", name: "Operators", crews: [{ calendarId: "C", heads: 3 }] }],
  changeoverRules: [rules],
  prices: {
    latePerWeightHour: 10,
    perLateOrderWeight: 100,
    changePerMachineHour: 50,
    changePerTeamHour: 40,
    scrapPerKg: 1,
    unplannedPerWeight: 10_000,
  },
};

function found(changed: Partial<PlantInput>): readonly string[] {
  return plantFaults(Plant.parse({ ...sound, ...changed })).map(
    ({ said, path }) => `${said.kind} ${path.join(".")}`,
  );
}

const lines = (...changed: readonly object[]): PlantInput["lines"] =>
  changed.map((change, index) => ({ ...line, id: `L${index + 1}`, operatorPoolId: "O", ...change }));
const mounted = (change: object): object => ({ mounted: { ...nothingMounted, ...change } });
const withMould = (change: object): Partial<PlantInput> => ({ moulds: [{ ...mouldA, ...change }] });
const days = (change: object): Partial<PlantInput> => ({ calendars: [{ ...calendar, ...change }] });
const shift = (change: object): Partial<PlantInput> =>
  days({ shifts: [{ name: "Night", weekdays: [1], start: "22:00", end: "06:00", ...change }] });

describe("faults of a plant", () => {
  it("finds none in a sound plant", () => {
    expect(found({})).toEqual([]);
    // Breaks may lie after midnight, and a shift of 24 hours holds any break.
    expect(found(shift({ breaks: [{ start: "23:45", end: "00:15" }] }))).toEqual([]);
    expect(found(shift({ end: "22:00", breaks: [{ start: "12:00", end: "12:30" }] }))).toEqual([]);
  });

  it.each<readonly [string, Partial<PlantInput>, readonly string[]]>([
    ["zone", { timeZone: "Mars/Base" }, ["unknown time zone timeZone"]],
    ["start date", { planFrom: "2026-02-30T06:00" }, ["no such date planFrom"]],
    ["two lines of one number", { lines: lines({}, { id: "L1" }) }, ["duplicate id lines.1.id"]],
    ["two calendars of one number", { calendars: [calendar, calendar] }, ["duplicate id calendars.1.id"]],
    [
      "polymer given twice",
      { polymers: [...polymers, ...polymers.slice(0, 1)] },
      ["duplicate polymer polymers.2.name"],
    ],
    [
      "rate given twice",
      { provenRates: [...sound.provenRates, ...sound.provenRates] },
      ["duplicate rate provenRates.1.productId"],
    ],
    ["insert listed twice", withMould({ inserts: ["i1", "i1"] }), ["duplicate insert moulds.0.inserts.1"]],
    ["line's calendar", { lines: lines({ calendarId: "X" }) }, ["unknown reference lines.0.calendarId"]],
    ["line's trolley", { lines: lines({ trolleyId: "X" }) }, ["unknown reference lines.0.trolleyId"]],
    [
      "line's operators",
      { lines: lines({ operatorPoolId: "X" }) },
      ["unknown reference lines.0.operatorPoolId"],
    ],
    [
      "line's polymer",
      { lines: lines({ polymers: ["PP", "PLA"] }) },
      ["unknown reference lines.0.polymers.1"],
    ],
    [
      "line's mounted records",
      { lines: lines(mounted({ mouldId: "X", copy: 1, sheetId: "X", productId: "X" })) },
      [
        "unknown reference lines.0.mounted.mouldId",
        "unknown reference lines.0.mounted.sheetId",
        "unknown reference lines.0.mounted.productId",
      ],
    ],
    [
      "insert that the mounted mould lacks",
      { lines: lines(mounted({ mouldId: "A", copy: 1, insertId: "i9" })) },
      ["unknown insert lines.0.mounted.insertId"],
    ],
    [
      "mould without its copy",
      { lines: lines(mounted({ mouldId: "A" })) },
      ["mounted in part lines.0.mounted.copy"],
    ],
    [
      "copy without its mould",
      { lines: lines(mounted({ copy: 1 })) },
      ["mounted in part lines.0.mounted.copy"],
    ],
    [
      "copy that does not exist",
      { lines: lines(mounted({ mouldId: "A", copy: 3 })) },
      ["copy beyond copies lines.0.mounted.copy"],
    ],
    [
      "copy on two lines",
      { lines: lines(mounted({ mouldId: "A", copy: 2 }), mounted({ mouldId: "A", copy: 2 })) },
      ["copy mounted twice lines.1.mounted.copy"],
    ],
    [
      "approved line",
      withMould({ approvedLineIds: ["L1", "X"] }),
      ["unknown reference moulds.0.approvedLineIds.1"],
    ],
    [
      "copy out of service that does not exist",
      withMould({
        outOfService: [{ copy: 3, from: "2026-06-01T00:00", to: "2026-06-02T00:00", reason: "Wash" }],
      }),
      ["copy beyond copies moulds.0.outOfService.0.copy"],
    ],
    [
      "cycles of copies that do not exist",
      withMould({ cyclesSinceService: [10, 20, 30] }),
      ["cycles beyond copies moulds.0.cyclesSinceService"],
    ],
    [
      "product's sheet",
      { products: [{ ...product, sheetId: "X" }] },
      ["unknown reference products.0.sheetId"],
    ],
    [
      "product's mould and insert",
      {
        products: [
          {
            ...product,
            moulds: [
              { mouldId: "X", insertId: "i1" },
              { mouldId: "A", insertId: "i9" },
            ],
          },
        ],
      },
      ["unknown reference products.0.moulds.0.mouldId", "unknown insert products.0.moulds.1.insertId"],
    ],
    [
      "product's mould listed twice",
      {
        products: [
          {
            ...product,
            moulds: [
              { mouldId: "A", insertId: null },
              { mouldId: "A", insertId: null },
            ],
          },
        ],
      },
      ["duplicate mould products.0.moulds.1.mouldId"],
    ],
    ["sheet's polymer", { sheets: [{ ...white, polymer: "PLA" }] }, ["unknown reference sheets.0.polymer"]],
    [
      "sheet's arrival",
      { sheets: [{ ...white, arrivals: [{ at: "2026-06-31T06:00", kg: 500 }] }] },
      ["no such date sheets.0.arrivals.0.at"],
    ],
    [
      "rate's line",
      { provenRates: sound.provenRates.map((rate) => ({ ...rate, lineId: "X" })) },
      ["unknown reference provenRates.0.lineId"],
    ],
    [
      "team's calendar",
      { setterTeams: [{ id: "S", name: "Setters", calendarId: "X", setters: 2 }] },
      ["unknown reference setterTeams.0.calendarId"],
    ],
    [
      "pool's calendar",
      { operatorPools: [{ id: "O", name: "Operators", crews: [{ calendarId: "X", heads: 1 }] }] },
      ["unknown reference operatorPools.0.crews.0.calendarId"],
    ],
    [
      "line closure",
      { lineClosures: [{ lineId: "X", from: "2026-06-09T14:00", to: "2026-06-09T06:00", reason: "Repair" }] },
      ["unknown reference lineClosures.0.lineId", "ends before start lineClosures.0.to"],
    ],
    [
      "added shift",
      {
        addedShifts: [
          {
            date: "2026-06-13",
            name: "Saturday",
            start: "06:00",
            end: "14:00",
            breaks: [{ start: "15:00", end: "15:30" }],
            lineIds: ["L1", "X"],
            teamIds: ["Y"],
            operators: [{ poolId: "Z", heads: 2 }],
          },
        ],
      },
      [
        "unknown reference addedShifts.0.lineIds.1",
        "unknown reference addedShifts.0.teamIds.0",
        "unknown reference addedShifts.0.operators.0.poolId",
        "break outside shift addedShifts.0.breaks.0",
      ],
    ],
    [
      "closure",
      days({ closures: [{ from: "2026-06-10T00:00", to: "2026-06-10T00:00", reason: "Holiday" }] }),
      ["ends before start calendars.0.closures.0.to"],
    ],
    [
      "break before the shift",
      shift({ breaks: [{ start: "12:00", end: "12:30" }] }),
      ["break outside shift calendars.0.shifts.0.breaks.0"],
    ],
    [
      "break without length",
      shift({ breaks: [{ start: "23:00", end: "23:00" }] }),
      ["break outside shift calendars.0.shifts.0.breaks.0"],
    ],
    [
      "handling table",
      {
        lines: lines({
          openTime: { kind: "table", rows: [60, 60].map((depthMm) => ({ depthMm, openSeconds: 1 })) },
        }),
      },
      ["wrong table order lines.0.openTime.rows.1.depthMm"],
    ],
  ])("names a wrong %s", (_, changed, expected) => {
    expect(found(changed)).toEqual(expected);
  });

  it("wants mould classes in order, the last one alone open-ended", () => {
    const classes = (...bounds: readonly (number | null)[]): Partial<PlantInput> => ({
      changeoverRules: [
        {
          ...rules,
          mouldClasses: bounds.map((upToMassKg) => ({
            name: "class",
            upToMassKg,
            dismountMinutes: 1,
            mountMinutes: 1,
          })),
        },
      ],
    });
    expect(found(classes(100, 200, null))).toEqual([]);
    const field = (place: number): string => `changeoverRules.0.mouldClasses.${place}.upToMassKg`;
    expect(found(classes(200, 100, null))).toEqual([`wrong mould class order ${field(1)}`]);
    expect(found(classes(100, 200))).toEqual([`last mould class bounded ${field(1)}`]);
    expect(found(classes(null, null))).toEqual([`mould class unbounded ${field(0)}`]);
  });

  it("wants exactly one set of changeover rules for each line", () => {
    const sets = (...lineIds: readonly (readonly string[] | null)[]): Partial<PlantInput> => ({
      changeoverRules: lineIds.map((ids) => ({ ...rules, lineIds: ids === null ? null : [...ids] })),
    });
    expect(found(sets(null, ["L1"]))).toEqual([]);
    expect(found(sets(null, null))).toEqual(["two changeover sets changeoverRules.1.lineIds"]);
    expect(found(sets(["L1"], ["L1"]))).toEqual(["two changeover sets changeoverRules.1.lineIds.0"]);
    expect(found(sets(["X"]))).toEqual([
      "unknown reference changeoverRules.0.lineIds.0",
      "no changeover rules lines.0.id",
    ]);
  });

  it("collects every fault and says what, where and what to do", () => {
    const faults = plantFaults(Plant.parse({ ...sound, timeZone: "Nowhere", sheets: [], trolleys: [] }));
    expect(faults.map(({ said }) => said.kind)).toEqual([
      "unknown time zone",
      "unknown reference",
      "unknown reference",
    ]);
    expect(faults[1]).toEqual({
      said: { kind: "unknown reference", to: "trolley", id: "T1" },
      path: ["lines", 0, "trolleyId"],
      of: { kind: "line", name: "L1" },
      field: "trolleyId",
      value: "T1",
      cause: "There is no trolley T1 in this plant.",
      remedy: "Correct the number, or add the trolley first.",
    });
  });
});

describe("faults of an order book", () => {
  const plant = Plant.parse(sound);
  const order = (id: string, more: object = {}): Order =>
    Order.parse({
      id,
      customer: "Customer",
      productId: "P",
      pieces: 1000,
      dueAt: 2_000_000_000,
      earliestStartAt: null,
      weight: 1,
      kind: "firm",
      underTolerance: 0,
      overTolerance: 0,
      partsAllowed: false,
      ...more,
    });

  it("finds none in a sound one", () => {
    expect(orderFaults([order("1"), order("2", { earliestStartAt: 2_000_000_000 })], plant)).toEqual([]);
    expect(orderFaults([], plant)).toEqual([]);
  });

  it("names numbers used twice, unknown products and starts after the due date", () => {
    const faults = orderFaults(
      [order("1"), order("2", { productId: "X" }), order("1", { earliestStartAt: 2_000_000_001 })],
      plant,
    );
    expect(faults.map(({ said, path, of }) => [said.kind, path, of.name])).toEqual([
      ["unknown reference", [1, "productId"], "2"],
      ["duplicate id", [2, "id"], "1"],
      ["start after due", [2, "earliestStartAt"], "1"],
    ]);
  });
});
