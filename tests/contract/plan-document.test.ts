import { type PlanDocument as Described, assembleProblem, describePlan } from "@formweek/application";
import { PlanDocument } from "@formweek/contracts";
import { demoOrders, demoPlant } from "@formweek/demo-plant";
import type { Plan } from "@formweek/scheduler";
import { describe, expect, expectTypeOf, test } from "vitest";

type DeepReadonly<T> = T extends object ? { readonly [Key in keyof T]: DeepReadonly<T[Key]> } : T;

const assembled = assembleProblem({
  plant: demoPlant("breakdown"),
  orders: demoOrders("breakdown"),
  pins: [],
  now: 0,
});
const { problem } = assembled;
const job = problem.jobs.find(({ options }) => options.length > 0);
const option = job?.options[0];
if (job === undefined || option === undefined) throw new Error("the demo has an order that a line can make");
const start = problem.horizon.start;
const at = { orderId: job.orderId, lot: 0, lineId: option.lineId, setupId: option.setupId };

/** One of each kind of segment; not a plan that an audit would pass, only one that holds every field. */
const plan: Plan = {
  segments: [
    {
      kind: "change",
      lineId: option.lineId,
      start,
      mountStart: start + 600,
      tailStart: start + 1200,
      end: start + 1800,
      fromSetupId: null,
      toSetupId: option.setupId,
      changeSpec: 0,
      stripping: false,
      teamId: problem.teams[0]?.id ?? null,
      trolleyId: null,
      mouldOut: null,
      mouldIn: null,
    },
    {
      kind: "run",
      ...at,
      productId: job.productId,
      mould: null,
      pieces: 100,
      start: start + 1800,
      end: start + 3600,
    },
    { kind: "stop", reason: "operators", ...at, start: start + 3600, end: start + 4000 },
  ],
  lots: [{ ...at, pieces: 100, start: start + 1800, end: start + 3600, finish: start + 3600 }],
  unplanned: [
    { orderId: job.orderId, reasons: [{ code: "no-operators", lineId: null, text: "Nobody is there." }] },
  ],
  objective: { terms: [{ name: "late orders", unit: "weight", amount: 1, price: 60, cost: 60 }], total: 60 },
};

describe("the plan document", () => {
  test("is described by the wire format field by field: nothing is lost, nothing is unknown", () => {
    const bound = { total: 30, lateness: 0, changes: 20, changeMinutes: 25.5 };
    const document = describePlan(assembled, plan, { engineVersion: "0", seed: 1, steps: 2, bound });
    expect(new Set(document.segments.map(({ kind }) => kind))).toEqual(new Set(["change", "run", "stop"]));
    expect(document.lines.some(({ closures }) => closures.length > 0)).toBe(true);
    expect(PlanDocument.parse(document)).toEqual(document);
    expect(JSON.parse(JSON.stringify(document))).toEqual(document);
  });

  test("has the same type on both sides of the wire", () => {
    expectTypeOf<DeepReadonly<PlanDocument>>().toEqualTypeOf<DeepReadonly<Described>>();
    expect(PlanDocument.safeParse({ format: "formweek-plan/2" }).success).toBe(false);
  });
});
