import { assembleProblem, auditDocument, describePlan } from "@formweek/application";
import type { Assembled, PlanDocument } from "@formweek/application";
import { Plant, changeBetween, ordersToMake, piecesPerUnit, rulesForLine } from "@formweek/capacity-model";
import { PlanDocument as PlanFile } from "@formweek/contracts";
import { demoOrders, demoPlant, generatePlant } from "@formweek/demo-plant";
import { solve } from "@formweek/scheduler";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stillEnv } from "../helpers/still-env.ts";

function documentOf(assembled: Assembled, steps: number): PlanDocument {
  const result = solve(assembled.problem, { seed: 1, maxSteps: steps, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(JSON.stringify(result));
  return describePlan(assembled, result.plan, {
    engineVersion: "test",
    seed: 1,
    steps,
    bound: result.bound,
  });
}

describe("plans of generated plants", () => {
  it("pass the audit after a journey through the plan file, and their figures add up", () => {
    let planned = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 1, max: 40 }),
        fc.nat(1000),
        (lines, orders, seed) => {
          const generated = generatePlant({ lines, orders, seed });
          const assembled = assembleProblem({ ...generated, pins: [], now: 0 });
          const document = JSON.parse(JSON.stringify(documentOf(assembled, 20))) as PlanDocument;
          expect(auditDocument(document, assembled)).toEqual({ sameInputs: true, violations: [] });
          expect(document.orders).toHaveLength(generated.orders.length);
          const { onTime, late, unplanned, coveredByStock } = document.summary;
          expect(onTime + late + unplanned + coveredByStock).toBe(generated.orders.length);
          for (const line of document.lines) {
            const parts = Object.values(line.utilisation);
            expect(Math.min(...parts)).toBeGreaterThanOrEqual(0);
          }
          const spans = new Set(
            document.lines.map(({ utilisation }) =>
              Object.values(utilisation).reduce((sum, seconds) => sum + seconds, 0),
            ),
          );
          expect(spans.size).toBe(1);
          for (const order of document.orders) {
            const made = document.segments.reduce(
              (sum, segment) =>
                segment.kind === "run" && segment.orderId === order.orderId ? sum + segment.pieces : sum,
              0,
            );
            expect(made).toBe(
              order.state === "unplanned" || order.state === "covered by stock" ? 0 : order.grossPieces,
            );
          }
          planned += document.lots.length;
        },
      ),
      { numRuns: 12 },
    );
    expect(planned).toBeGreaterThan(50);
  });
});

describe("orders that may be delivered in parts", () => {
  it("may be made in lots of a least run and a carton at the least, in whole rounding units with their scrap", () => {
    let split = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 4 }), fc.nat(1000), (lines, seed) => {
        const { plant, orders } = generatePlant({ lines, orders: 20, seed });
        const { problem } = assembleProblem({ plant, orders, pins: [], now: 0 });
        for (const job of problem.jobs) {
          const order = orders.find(({ id }) => id === job.orderId)!;
          const product = plant.products.find(({ id }) => id === order.productId)!;
          if (!order.partsAllowed) expect(job.lots).toBeUndefined();
          if (job.lots === undefined) continue;
          const goodOf = (gross: number): number => gross * (1 - product.runScrapShare) * (1 + 1e-9);
          const { leastPieces, unitPieces } = job.lots;
          const carton = product.piecesPerStack * product.stacksPerCarton;
          expect(goodOf(leastPieces)).toBeGreaterThanOrEqual(Math.max(product.leastRunPieces, carton));
          expect(goodOf(unitPieces)).toBeGreaterThanOrEqual(piecesPerUnit(product, product.roundingUnit));
          expect(job.pieces).toBeGreaterThanOrEqual(2 * leastPieces);
          split++;
        }
      }),
      { numRuns: 20 },
    );
    expect(split).toBeGreaterThan(20);
  });
});

describe("change matrices", () => {
  it("hold for each pair of states what the changeover rules say, though most pairs are looked up", () => {
    const plant = demoPlant("full");
    const { problem, states } = assembleProblem({ plant, orders: demoOrders("full"), pins: [], now: 0 });
    fc.assert(
      fc.property(
        fc.nat(plant.lines.length - 1),
        fc.nat(states.length - 1),
        fc.nat(states.length - 1),
        (lineIndex, fromIndex, toIndex) => {
          const [line, from, to] = [plant.lines[lineIndex], states[fromIndex], states[toIndex]];
          const rules = line === undefined ? null : rulesForLine(plant.changeoverRules, line.id);
          if (line === undefined || from === undefined || to === undefined || rules === null)
            throw new Error("no such pair");
          const change = changeBetween({ from, to, line, rules, polymers: plant.polymers, setters: 2 });
          const classId = problem.lines[lineIndex]?.changeClassId;
          const index =
            problem.changeClasses.find(({ id }) => id === classId)?.matrix[fromIndex]?.[toIndex] ?? -2;
          if (change === null) expect(index).toBe(-1);
          else {
            const { dismountSeconds, mountSeconds, tailSeconds, usesTrolley, scrapKg } = change;
            expect(problem.changes[index]).toEqual({
              dismountSeconds,
              mountSeconds,
              tailSeconds,
              usesTrolley,
              scrapKg,
            });
          }
        },
      ),
      { numRuns: 3000 },
    );
  });
});

describe("what a plant's prices weigh", () => {
  const plant = demoPlant("full");
  const [line] = plant.lines;
  const [order] = demoOrders("full");
  if (line === undefined || order === undefined) throw new Error("the demo has no line or no order");

  it("is nothing new in a plant stored before they were known", () => {
    const { overtimePerHour, earlyPerPalletHour, balancePerHour, ...known } = plant.prices;
    expect([overtimePerHour, earlyPerPalletHour, balancePerHour]).toEqual([0, 0, 0]);
    expect(Plant.parse({ ...plant, prices: known })).toEqual(plant);
    expect(Plant.safeParse({ ...plant, prices: { ...known, overtimePerHour: -1 } }).success).toBe(false);
  });

  it("reaches the objective, an extra shift as overtime and an order by its pallets", () => {
    const prices = { ...plant.prices, overtimePerHour: 30, earlyPerPalletHour: 0.2, balancePerHour: 3 };
    const shift = { name: "Sunday", date: "2026-12-06", start: "08:00", end: "12:00", breaks: [] };
    const calendars = plant.calendars.map((calendar) =>
      calendar.id === line.calendarId
        ? {
            ...calendar,
            extraShifts: [shift],
            closures: [{ from: "2026-12-06T00:00", to: "2026-12-07T00:00", reason: "Closed" }],
          }
        : calendar,
    );
    const lineClosures = [
      { lineId: line.id, from: "2026-12-06T11:00", to: "2026-12-06T14:00", reason: "Cleaning" },
    ];
    const orders = [order];
    const { problem } = assembleProblem({
      plant: { ...plant, prices, calendars, lineClosures },
      orders,
      pins: [],
      now: 0,
    });
    expect(problem.objective).toMatchObject({
      overtimePerHour: 30,
      earlinessPerWeightHour: 0.2,
      balancePerHour: 3,
    });
    const from = Date.UTC(2026, 11, 6, 7) / 1000;
    expect(problem.lines[0]?.overtime).toEqual({
      starts: [from],
      ends: [from + 3 * 3600],
      workedBefore: [0],
    });
    const [made] = ordersToMake(orders, plant.products);
    const product = plant.products.find(({ id }) => id === order.productId);
    if (made === undefined || product === undefined) throw new Error("nothing to make");
    const perPallet = product.piecesPerStack * product.stacksPerCarton * product.cartonsPerPallet;
    expect(problem.jobs[0]?.holdingWeight).toBe(Math.ceil(made.goodPiecesToMake / perPallet));
  });
});

describe("service counters of moulds", () => {
  const plant = demoPlant("full");
  const planned = (part: Partial<Plant["moulds"][number]>) =>
    assembleProblem({
      plant: { ...plant, moulds: plant.moulds.map((mould) => ({ ...mould, ...part })) },
      orders: demoOrders("full"),
      pins: [],
      now: 0,
    });

  it("reach the engine with the cycles done, unless a service takes no time", () => {
    const [mould] = plant.moulds;
    const part = { serviceAfterCycles: 20_000, serviceHours: 1.5, cyclesSinceService: [700] };
    const service = { afterCycles: 20_000, seconds: 5400, cyclesDone: [700] };
    expect(planned(part).problem.moulds[0]?.service).toEqual(service);
    expect(planned({ ...part, serviceHours: 0 }).problem.moulds[0]?.service).toBeUndefined();
    expect(planned({ serviceAfterCycles: null }).problem.moulds[0]?.service).toBeUndefined();
    const { jobs, setups } = planned(part).problem;
    const setupIds = setups.filter(({ mouldId }) => mouldId === mould?.id).map(({ id }) => id);
    const option = jobs.flatMap(({ options }) => options).find(({ setupId }) => setupIds.includes(setupId));
    expect(option?.piecesPerCycle).toBe((mould?.cavitiesAlong ?? 0) * (mould?.cavitiesAcross ?? 0));
  });

  it("give plans whose services stand in the plan file and pass the audit", () => {
    const assembled = planned({ serviceAfterCycles: 20_000, serviceHours: 2, cyclesSinceService: [19_000] });
    const document = PlanFile.parse(JSON.parse(JSON.stringify(documentOf(assembled, 40)))) as PlanDocument;
    const services = document.segments.filter(
      (segment) => segment.kind === "stop" && segment.reason === "service",
    );
    expect(services.length).toBeGreaterThan(5);
    expect(auditDocument(document, assembled)).toEqual({ sameInputs: true, violations: [] });
  });
});

describe("the same inputs", () => {
  it("give the same plan file, byte for byte, and another hash where anything differs", () => {
    const inputs = { plant: demoPlant("full"), orders: demoOrders("full"), pins: [], now: 0 };
    const [one, other] = [assembleProblem(inputs), assembleProblem(inputs)];
    expect(JSON.stringify(documentOf(one, 40))).toBe(JSON.stringify(documentOf(other, 40)));
    const [first, ...rest] = inputs.orders;
    if (first === undefined) throw new Error("the demo has no order");
    const changed = assembleProblem({ ...inputs, orders: [{ ...first, pieces: first.pieces + 1 }, ...rest] });
    expect(changed.inputHash).not.toBe(one.inputHash);
  });
});
