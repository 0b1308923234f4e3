import { Order, Plant, instantOfLocalText, localTextAt, ordersToMake } from "@formweek/capacity-model";
import { demoOrders, demoPlant } from "@formweek/demo-plant";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { deskOf } from "../../../../tests/helpers/desk-on-demo.ts";
import { promiseGiven } from "./ask-promise.ts";
import { findAlternatives } from "./find-alternatives.ts";
import type { Enquiry, Offer } from "./promise-answer.ts";
import type { StandingDesk } from "./standing-desk.ts";

const demo = demoPlant("calm");
const orders = demoOrders("calm").slice(0, 14);

function offered(standing: StandingDesk, enquiry: Enquiry): Offer {
  const given = promiseGiven(standing, enquiry, 0);
  if (!given.ok) throw new Error(given.error.cause);
  if (given.value.outcome.status !== "promised") throw new Error(given.value.outcome.status);
  return given.value.outcome.offer;
}

/** One line that is always open, one mould of 36 cavities, and nothing in a change but mounting it. */
function onePlant(): Plant {
  const large = demo.moulds.find(({ cavitiesAlong, cavitiesAcross }) => cavitiesAlong * cavitiesAcross > 36)!;
  const mould = { ...large, cavitiesAlong: 6, cavitiesAcross: 6 };
  const product = demo.products.find(({ moulds }) => moulds.some(({ mouldId }) => mouldId === mould.id))!;
  const line = demo.lines.find(
    ({ id }) => mould.approvedLineIds === null || mould.approvedLineIds.includes(id),
  )!;
  const [rules] = demo.changeoverRules;
  const none = Object.fromEntries(
    Object.entries(rules!).flatMap(([name, value]) => (typeof value === "number" ? [[name, 0]] : [])),
  );
  return Plant.parse({
    ...demo,
    planFrom: "2026-12-01T06:00",
    calendars: [
      {
        id: "open",
        name: "Open",
        shifts: [{ name: "all day", weekdays: [1, 2, 3, 4, 5, 6, 7], start: "00:00", end: "00:00" }],
      },
    ],
    lines: [
      {
        ...line,
        calendarId: "open",
        operatorPoolId: null,
        operatorsNeeded: 0,
        trolleyId: null,
        performanceFactor: 0.85,
        mounted: { mouldId: null, copy: null, insertId: null, sheetId: product.sheetId, productId: null },
      },
    ],
    lineClosures: [],
    moulds: [
      { ...mould, heatUpMinutes: 0, approvedLineIds: null, serviceAfterCycles: null, outOfService: [] },
    ],
    products: [
      {
        ...product,
        moulds: product.moulds.filter(({ mouldId }) => mouldId === mould.id),
        runScrapShare: 0,
        leastRunPieces: 0,
        roundingUnit: "piece",
        conditioningHours: 24,
        stockPieces: 0,
        safetyStockPieces: 0,
      },
    ],
    // 30 cycles a minute by the machine, of which 85 % are reached
    provenRates: [
      {
        lineId: line.id,
        mouldId: mould.id,
        productId: product.id,
        cyclesPerMin: 30 * 0.85,
        reports: 9,
        spreadCyclesPerMin: 0,
      },
    ],
    setterTeams: demo.setterTeams.slice(0, 1).map((team) => ({ ...team, calendarId: "open" })),
    operatorPools: [],
    changeoverRules: [
      {
        ...rules,
        ...none,
        extruderColourFactor: 1,
        colourStepRanks: undefined,
        mouldClasses: [{ name: "any", upToMassKg: null, dismountMinutes: 0, mountMinutes: 90 }],
      },
    ],
  });
}

describe("a promise", () => {
  it("CV-54 comes out of the whole use case: line free, change, run, conditioning", () => {
    // Source: the trade's worked example (derived): free Tuesday 06:00, change 1 h 30, 36 cavities × 30/min × 0.85 = 55,080 pieces/h,
    // 185,000 pieces take 3.3588 h: finished Tuesday 10:51:31, and ready 24 h of conditioning later.
    const plant = onePlant();
    const [product] = plant.products;
    const offer = offered(deskOf(plant, []), {
      product: product!.name,
      pieces: 185_000,
      wanted: null,
      partsAllowed: false,
    });
    const [part] = offer.parts;
    const at = (text: string): number => instantOfLocalText(plant.timeZone, text) ?? 0;
    const seconds = (text: string): number => Date.parse(text) / 1000;
    expect(part!.change).toMatchObject({ minutes: 90 });
    expect(localTextAt(plant.timeZone, seconds(part!.change!.start))).toBe("2026-12-01T06:00");
    expect(Math.abs(seconds(part!.end) - at("2026-12-01T10:51:31"))).toBeLessThanOrEqual(1);
    expect(Math.abs(seconds(offer.promised) - at("2026-12-02T10:51:31"))).toBeLessThanOrEqual(1);
    expect(Math.round(part!.rate.piecesPerHour)).toBe(55_080);
    expect(part!.rate.basis).toEqual({ kind: "proven", reports: 9 });
  });

  it("takes no stock that another order has, whenever that is due", () => {
    const [product] = demo.products;
    const order = (id: string, pieces: number, dueAt: number): Order =>
      Order.parse({ ...orders[0], id, productId: product!.id, pieces, dueAt });
    const first = orders[0]!.dueAt;
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 90_000 }),
        fc.integer({ min: 1, max: 60_000 }),
        (stockPieces, pieces) => {
          const products = [{ ...product!, stockPieces, safetyStockPieces: 1_000 }];
          const book = [order("A", 30_000, first + 10 * 86_400), order("B", 20_000, first + 5 * 86_400)];
          const without = ordersToMake(book, products);
          const left =
            Math.max(0, stockPieces - 1_000) - without.reduce((sum, made) => sum + made.fromStockPieces, 0);
          const shares = new Map([["C", left]]);
          const all = ordersToMake([...book, order("C", pieces, first)], products, shares);
          expect(all.slice(0, 2)).toEqual(without);
          expect(all[2]!.fromStockPieces).toBe(Math.min(left, pieces));
        },
      ),
      { seed: 5, numRuns: 100 },
    );
  });

  it("has a price that is the sum of its terms, and leaves every other order in time", () => {
    const standing = deskOf(demo, orders);
    const due = new Map<string, number>(orders.map(({ id, dueAt }) => [id, dueAt]));
    for (const product of demo.products.slice(0, 25)) {
      const given = promiseGiven(
        standing,
        { product: product.id, pieces: 30_000, wanted: null, partsAllowed: false },
        0,
      );
      if (!given.ok || given.value.outcome.status !== "promised") continue;
      const { offer } = given.value.outcome;
      expect(offer.price.cost).toBeCloseTo(
        offer.price.terms.reduce((sum, { cost }) => sum + cost, 0),
        2,
      );
      expect(offer.displaced).toEqual([]);
      for (const { orderId, end } of offer.moved) {
        const limit = standing.desk.limitOf(orderId)!;
        expect(Date.parse(end) / 1000).toBeLessThanOrEqual(limit.by);
        expect(limit.by).toBeGreaterThanOrEqual(due.get(orderId)!);
      }
      expect(offer.promised >= offer.finish).toBe(true);
    }
  });

  it("in other ways ends earlier, or says why there is none", async () => {
    const standing = deskOf(demo, orders);
    const clock = { now: () => 0, monotonicMs: () => 0 };
    const enquiry = {
      product: demo.products[0]!.id,
      pieces: 900_000,
      wanted: "2026-12-04",
      partsAllowed: true,
    };
    const whole = offered(standing, enquiry);
    const found = await findAlternatives(standing, enquiry, clock);
    if (!found.ok) throw new Error(found.error.cause);
    for (const { kind, finish, parts, shift } of found.value.offers) {
      if (kind !== "first part") expect(finish < whole.finish).toBe(true);
      if (kind === "first part") expect(parts[0]!.finish <= "2026-12-04T23:00:00Z").toBe(true);
      expect(shift !== null).toBe(kind === "extra shift");
      expect(parts.reduce((sum, { pieces }) => sum + pieces, 0)).toBe(
        whole.parts.reduce((sum, { pieces }) => sum + pieces, 0),
      );
    }
    expect(found.value.offers.length).toBeGreaterThan(0);
  });
});
