import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { instantOfLocalText, localTextAt } from "../calendar/time-zone.ts";
import { workingTimeOf } from "../calendar/working-time.ts";
import { Order } from "../plant/order.ts";
import { Product } from "../plant/product.ts";
import { ordersToMake } from "./orders-to-make.ts";
import type { OrderToMake } from "./orders-to-make.ts";
import {
  cyclesForPieces,
  grossPiecesFor,
  packingChainOf,
  piecesPerUnit,
  roundUpToUnit,
} from "./packing-chain.ts";
import { finishOfRun, runSeconds } from "./run-finish.ts";
import { safetyStockPieces } from "./safety-stock.ts";

const cup = Product.parse({
  id: "cup",
  name: "Cup",
  moulds: [{ mouldId: "A", insertId: null }],
  sheetId: "white",
  netMassG: 5,
  wallThicknessMm: 0.5,
  rimRolled: false,
  piecesPerStack: 50,
  stacksPerCarton: 20,
  cartonsPerPallet: 24,
  runScrapShare: 0.02,
  leastRunPieces: 0,
  roundingUnit: "piece",
  conditioningHours: 0,
  stockPieces: 0,
  safetyStockPieces: 0,
});

function order(
  id: string,
  pieces: number,
  dueAt: number,
  more: Partial<Record<keyof Order, unknown>> = {},
): Order {
  return Order.parse({
    id,
    customer: "Customer",
    productId: "cup",
    pieces,
    dueAt,
    earliestStartAt: null,
    weight: 1,
    kind: "firm",
    underTolerance: 0,
    overTolerance: 0.1,
    partsAllowed: false,
    ...more,
  });
}

function only(orders: readonly Order[], product: Product): OrderToMake {
  const [first] = ordersToMake(orders, [product]);
  if (first === undefined) throw new Error("no order came back");
  return first;
}

describe("check values", () => {
  it("CV-53 rounds 185,000 pieces through stacks, cartons and pallets, and to whole cycles", () => {
    // Source: derived; 50 a stack, 1,000 a carton, 24 cartons a pallet, 36 cavities, 98 % good.
    expect(packingChainOf(185_000, cup)).toEqual({ stacks: 3700, cartons: 185, pallets: 8 });
    const gross = grossPiecesFor(185_000, 0.02);
    expect(gross).toBe(188_776);
    expect([cyclesForPieces(185_000, 36), cyclesForPieces(gross, 36)]).toEqual([5139, 5244]);
    expect(only([order("O", 185_000, 10)], cup).grossPieces).toBe(188_776);
  });

  it("CV-52 sizes the safety stock", () => {
    // Source: derived; z 1.645 for 95 %, 400 pieces a week of spread, four weeks to replenish.
    const uncertainty = {
      serviceFactor: 1.645,
      demandPerWeek: 1000,
      demandSpreadPerWeek: 400,
      leadTimeWeeks: 4,
      leadTimeSpreadWeeks: 0,
    };
    expect(safetyStockPieces(uncertainty)).toBe(1316);
    expect(safetyStockPieces({ ...uncertainty, demandSpreadPerWeek: 0 })).toBe(0);
    // Lead time alone uncertain: z × demand × its spread.
    expect(
      safetyStockPieces({
        ...uncertainty,
        serviceFactor: 2,
        demandSpreadPerWeek: 0,
        leadTimeSpreadWeeks: 0.5,
      }),
    ).toBe(1000);
  });

  it("CV-54 finds the promise time of a run", () => {
    // Source: derived; free Tuesday 06:00, change 90 min, 36 × 30 × 60 × 0.85 = 55,080 pieces/h, 185,000 pieces.
    const freeAt = instantOfLocalText("Europe/Paris", "2026-06-09T06:00") ?? 0;
    const run = {
      workingTime: workingTimeOf([[freeAt, freeAt + 86_400]]),
      freeAt,
      changeSeconds: 90 * 60,
      pieces: 185_000,
      piecesPerHour: 36 * 30 * 60 * 0.85,
      conditioningSeconds: 24 * 3600,
    };
    const finish = finishOfRun(run);
    const exact = instantOfLocalText("Europe/Paris", "2026-06-09T10:51:31") ?? 0;
    expect(Math.abs((finish?.lastPieceAt ?? 0) - exact)).toBeLessThanOrEqual(1);
    expect(localTextAt("Europe/Paris", finish?.changeEndAt ?? 0)).toBe("2026-06-09T07:30");
    expect((finish?.readyAt ?? 0) - (finish?.lastPieceAt ?? 0)).toBe(86_400);
    expect(finishOfRun({ ...run, pieces: 10_000_000 })).toBeNull();
    expect(finishOfRun({ ...run, changeSeconds: 90_000 })).toBeNull();
  });

  it("CV-59 values the machine hours of an order against a change", () => {
    // Source: a moulder's published arithmetic: 25,000 parts, 4 cavities, 20 s a cycle, 5,000 of sales, 200 a change.
    const hours = runSeconds(25_000, (3600 / 20) * 4) / 3600;
    expect(hours).toBeCloseTo(34.722, 3);
    const salesPerHour = 5000 / hours;
    expect(salesPerHour).toBeCloseTo(144, 2);
    expect((200 / salesPerHour) * 60).toBeCloseTo(83.3, 1);
  });
});

describe("stock netting", () => {
  it("serves stock in due order, firm before forecast, then by number", () => {
    const product = { ...cup, stockPieces: 1500 };
    const orders = [
      order("late", 1000, 30),
      order("b", 400, 20, { kind: "forecast" }),
      order("c", 300, 20),
      order("a", 300, 20),
      order("early", 600, 10),
    ];
    expect(
      ordersToMake(orders, [product]).map(({ orderId, fromStockPieces }) => [orderId, fromStockPieces]),
    ).toEqual([
      ["late", 0],
      ["b", 300],
      ["c", 300],
      ["a", 300],
      ["early", 600],
    ]);
  });

  it("keeps the safety stock, and lets the last order bring it back where it has sunk", () => {
    const kept = { ...cup, stockPieces: 1000, safetyStockPieces: 600 };
    expect(only([order("O", 500, 10)], kept)).toMatchObject({
      fromStockPieces: 400,
      goodPiecesToMake: 100,
      toSafetyStockPieces: 0,
    });
    const sunk = { ...cup, stockPieces: 100, safetyStockPieces: 600 };
    expect(
      ordersToMake([order("last", 50, 20), order("first", 70, 10)], [sunk]).map((made) => [
        made.toSafetyStockPieces,
        made.goodPiecesToMake,
      ]),
    ).toEqual([
      [500, 550],
      [0, 70],
    ]);
  });

  it("makes nothing for an order that the shelf covers", () => {
    const made = only([order("O", 500, 10)], {
      ...cup,
      stockPieces: 500,
      leastRunPieces: 9000,
      roundingUnit: "pallet",
    });
    expect(made).toMatchObject({
      fromStockPieces: 500,
      goodPiecesToMake: 0,
      grossPieces: 0,
      surplusPieces: 0,
    });
    expect(made.trail).toEqual(["500 ordered", "500 from stock, 0 left", "nothing to make"]);
  });

  it("leaves out orders of products it does not know", () => {
    expect(ordersToMake([order("O", 5, 1, { productId: "other" })], [cup])).toEqual([]);
    expect(ordersToMake([], [cup])).toEqual([]);
  });
});

describe("rounding", () => {
  it("raises to the least run, then to whole units, then by the scrap, and says so", () => {
    const made = only([order("O", 12_345, 10)], {
      ...cup,
      stockPieces: 345,
      leastRunPieces: 20_500,
      roundingUnit: "carton",
    });
    expect(made).toMatchObject({ goodPiecesToMake: 21_000, surplusPieces: 9000, withinOverTolerance: false });
    expect(made.grossPieces).toBe(Math.ceil(21_000 / 0.98));
    expect(made.trail).toEqual([
      "12,345 ordered",
      "345 from stock, 12,000 left",
      "least run is 20,500",
      "rounded up to 21 cartons of 1,000: 21,000",
      "2 % scrap while running: 21,429 to form",
      "9,000 go to stock",
    ]);
  });

  it("knows each unit of the chain", () => {
    expect((["piece", "stack", "carton", "pallet"] as const).map((unit) => piecesPerUnit(cup, unit))).toEqual(
      [1, 50, 1000, 24_000],
    );
  });

  it("does not add a piece for a share that no binary number holds exactly", () => {
    // 900 good of 1,000 at 10 % scrap; 1 - 0.1 and 0.9 differ in binary.
    expect(grossPiecesFor(900, 0.1)).toBe(1000);
    expect(grossPiecesFor(700, 0.3)).toBe(1000);
    expect(grossPiecesFor(0, 0.3)).toBe(0);
  });

  it("does not drop a small part of a piece of very many", () => {
    // 10⁹ × 1000 / 999 is 1,001,001,001.001…; 999,999,641 × 1000 / 997 is 1,003,008,667.001…
    expect(grossPiecesFor(1_000_000_000, 0.001)).toBe(1_001_001_002);
    expect(grossPiecesFor(999_999_641, 0.003)).toBe(1_003_008_668);
  });

  it("gives enough, in whole units, and never a unit too many", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1_000_000_000 }),
        fc.constantFrom("piece", "stack", "carton", "pallet"),
        fc.integer({ min: 0, max: 900 }),
        (pieces, unit, permille) => {
          const size = piecesPerUnit(cup, unit);
          const rounded = roundUpToUnit(pieces, cup, unit);
          expect(rounded % size).toBe(0);
          expect(rounded - pieces).toBeGreaterThanOrEqual(0);
          expect(rounded - pieces).toBeLessThan(size);
          const gross = grossPiecesFor(rounded, permille / 1000);
          // Whole numbers throughout: gross × (1000 - permille) >= rounded × 1000, and one piece less is too few.
          expect(BigInt(gross) * BigInt(1000 - permille) >= BigInt(rounded) * 1000n).toBe(true);
          expect(BigInt(gross - 1) * BigInt(1000 - permille) < BigInt(rounded) * 1000n).toBe(true);
        },
      ),
    );
  });

  it("uses up all free stock and no more, order by order", () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ pieces: fc.integer({ min: 1, max: 500 }), dueAt: fc.nat(5) }), {
          minLength: 1,
          maxLength: 8,
        }),
        fc.nat(1500),
        fc.nat(800),
        (rows, stockPieces, safety) => {
          const orders = rows.map(({ pieces, dueAt }, index) => order(`O${index}`, pieces, dueAt));
          const made = ordersToMake(orders, [{ ...cup, stockPieces, safetyStockPieces: safety }]);
          const sum = (pick: (one: OrderToMake) => number): number =>
            made.reduce((total, one) => total + pick(one), 0);
          const ordered = sum((one) => one.orderedPieces);
          expect(sum((one) => one.fromStockPieces)).toBe(
            Math.min(ordered, Math.max(0, stockPieces - safety)),
          );
          // What is on the shelf at the end, all delivered: never below the safety stock.
          expect(stockPieces + sum((one) => one.goodPiecesToMake) - ordered).toBeGreaterThanOrEqual(safety);
        },
      ),
    );
  });
});
