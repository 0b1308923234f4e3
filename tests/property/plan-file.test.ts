import { assembleProblem, auditDocument, describePlan, planOfDocument } from "@formweek/application";
import type { Assembled, PlanDocument } from "@formweek/application";
import { demoOrders, demoPlant, generatePlant } from "@formweek/demo-plant";
import { solve } from "@formweek/scheduler";
import type { Plan } from "@formweek/scheduler";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stillEnv } from "../helpers/still-env.ts";

function planned(assembled: Assembled, steps: number): Plan {
  const result = solve(assembled.problem, { seed: 1, maxSteps: steps, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(result.status);
  return result.plan;
}

/** Described, written as text, and read again. */
function throughFile(assembled: Assembled, plan: Plan): PlanDocument {
  const origin = { engineVersion: "test", seed: 1, steps: 1, bound: null };
  return JSON.parse(JSON.stringify(describePlan(assembled, plan, origin))) as PlanDocument;
}

describe("a plan read back from its file", () => {
  it("is the plan that was written, field by field, for plants of all sizes", () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 1, max: 60 }),
        fc.nat(1000),
        (lines, orders, seed) => {
          const assembled = assembleProblem({ ...generatePlant({ lines, orders, seed }), pins: [], now: 0 });
          const plan = planned(assembled, 10);
          expect(planOfDocument(throughFile(assembled, plan), assembled.problem)).toEqual(plan);
          for (const { kind } of plan.segments) kinds.add(kind);
        },
      ),
      { numRuns: 15 },
    );
    expect(kinds).toEqual(new Set(["change", "run", "stop"]));
  });

  it("is the plan that was written where orders stay out of it, reasons included", () => {
    const plant = demoPlant("full");
    const shut = plant.lines.map(({ id }) => ({
      lineId: id,
      from: "2026-11-30T06:00",
      to: "2027-02-28T06:00",
      reason: "rebuilding",
    }));
    const assembled = assembleProblem({
      plant: { ...plant, lineClosures: shut.slice(2) },
      orders: demoOrders("full"),
      pins: [],
      now: 0,
    });
    const plan = planned(assembled, 10);
    expect(plan.unplanned.length).toBeGreaterThan(0);
    expect(planOfDocument(throughFile(assembled, plan), assembled.problem)).toEqual(plan);
  });
});

describe("a plan file altered in one place", () => {
  const assembled = assembleProblem({
    plant: demoPlant("full"),
    orders: demoOrders("full"),
    pins: [],
    now: 0,
  });
  const document = throughFile(assembled, planned(assembled, 50));
  const later = (iso: string): string => new Date(Date.parse(iso) + 60_000).toISOString().replace(".000", "");
  const anySegment = fc.integer({ min: 0, max: document.segments.length - 1 });

  it("does not pass the audit, whichever segment begins or ends a minute later", () => {
    fc.assert(
      fc.property(anySegment, fc.constantFrom("start" as const, "end" as const), (index, field) => {
        const segments = document.segments.map((segment, at) =>
          at === index ? { ...segment, [field]: later(segment[field]) } : segment,
        );
        expect(auditDocument({ ...document, segments }, assembled).violations).not.toEqual([]);
      }),
    );
  });

  it("does not pass the audit, whichever segment is missing", () => {
    fc.assert(
      fc.property(anySegment, (index) => {
        const segments = document.segments.filter((_, at) => at !== index);
        expect(auditDocument({ ...document, segments }, assembled).violations).not.toEqual([]);
      }),
    );
  });

  it("does not pass the audit, whichever lot claims a piece more", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: document.lots.length - 1 }), (index) => {
        const lots = document.lots.map((lot, at) =>
          at === index ? { ...lot, pieces: lot.pieces + 1 } : lot,
        );
        expect(auditDocument({ ...document, lots }, assembled).violations).not.toEqual([]);
      }),
    );
  });
});
