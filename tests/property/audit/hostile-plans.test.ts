import { auditPlan, type Plan } from "@formweek/scheduler";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { samplePlan, sampleProblem } from "../../fixtures/sample-plan.ts";

type Path = readonly (string | number)[];

/** Paths of every value in a record, inner nodes first named, then their leaves. */
function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [path];
  const inner = Object.entries(value).flatMap(([key, entry]) => pathsOf(entry, [...path, key]));
  return path.length === 0 ? inner : [path, ...inner];
}

function valueAt(value: unknown, path: Path): unknown {
  return path.reduce((inner, key) => (inner as Record<string, unknown>)[key], value);
}

/** The plan with the value at the path replaced. */
function withValue(plan: Plan, path: Path, replacement: unknown): Plan {
  const copy = structuredClone(plan);
  const parent = valueAt(copy, path.slice(0, -1)) as Record<string, unknown>;
  parent[String(path[path.length - 1])] = replacement;
  return copy;
}

const paths = pathsOf(samplePlan);
const leaves = paths.filter(
  (path) => typeof valueAt(samplePlan, path) !== "object" || valueAt(samplePlan, path) === null,
);

/** What may be said otherwise without making the plan wrong: words for people, and which reason comes to mind. */
function isFree(path: Path): boolean {
  return path.includes("reasons") || path[path.length - 1] === "unit";
}

const words = [
  ...new Set(leaves.map((path) => valueAt(samplePlan, path)).filter((value) => typeof value === "string")),
];

/** Another value of the same kind: an id that exists, a number not far off, the other truth. */
function neighbour(value: unknown): fc.Arbitrary<unknown> {
  switch (typeof value) {
    case "string":
      return fc.constantFrom(...words, "").filter((other) => other !== value);
    case "number":
      return fc
        .integer({ min: -100_000, max: 100_000 })
        .filter((step) => step !== 0)
        .map((step) => value + step);
    case "boolean":
      return fc.constant(!value);
    default:
      return fc.constantFrom<unknown>(...words, { mouldId: "M1", copy: 0 }, { mouldId: "M2", copy: 0 });
  }
}

const hostile: fc.Arbitrary<unknown> = fc.oneof(
  fc.anything({
    withBigInt: true,
    withNullPrototype: true,
    withSparseArray: true,
    withDate: true,
    withMap: true,
  }),
  fc.constantFrom<unknown>(NaN, Infinity, -Infinity, -0, 2 ** 53, 1e308, undefined, null, Symbol("a"), 1n),
  fc.constantFrom("__proto__", "constructor", "toString", "hasOwnProperty"),
);

describe("a plan with one value changed", () => {
  it("is always refused, but for words that mean nothing to the plan", () => {
    const changed = fc
      .constantFrom(...leaves.filter((path) => !isFree(path)))
      .chain((path) =>
        neighbour(valueAt(samplePlan, path)).map((value) => withValue(samplePlan, path, value)),
      );
    fc.assert(
      fc.property(changed, (plan) => {
        expect(auditPlan(sampleProblem, plan)).not.toEqual([]);
      }),
      { numRuns: 3000 },
    );
  });

  it("is still valid where only the words differ", () => {
    const texts = leaves.filter((path) => ["text", "unit"].includes(String(path[path.length - 1])));
    fc.assert(
      fc.property(fc.constantFrom(...texts), fc.string({ minLength: 1 }), (path, value) => {
        expect(auditPlan(sampleProblem, withValue(samplePlan, path, value))).toEqual([]);
      }),
    );
  });

  it("is refused without each of its segments and lots, and with any of them twice", () => {
    for (const list of ["segments", "lots", "unplanned"] as const) {
      samplePlan[list].forEach((entry, index) => {
        const fewer = (samplePlan[list] as readonly unknown[]).filter((_, other) => other !== index);
        const more = (samplePlan[list] as readonly unknown[]).flatMap((other) =>
          other === entry ? [other, other] : [other],
        );
        expect(auditPlan(sampleProblem, withValue(samplePlan, [list], fewer))).not.toEqual([]);
        expect(auditPlan(sampleProblem, withValue(samplePlan, [list], more))).not.toEqual([]);
      });
    }
  });
});

describe("a hostile plan", () => {
  it("is answered with violations, never with an exception, whatever stands at any place", () => {
    fc.assert(
      fc.property(fc.constantFrom(...paths), hostile, (path, value) => {
        const found = auditPlan(sampleProblem, withValue(samplePlan, path, value));
        expect(Array.isArray(found)).toBe(true);
        for (const { text } of found) expect(text.length).toBeGreaterThan(0);
      }),
      { numRuns: 3000 },
    );
  });

  it("survives several spoilt values at once", () => {
    const spoilt = fc
      .array(fc.tuple(fc.constantFrom(...leaves), fc.double()), { minLength: 1, maxLength: 6 })
      .map((edits) => edits.reduce((plan, [path, value]) => withValue(plan, path, value), samplePlan));
    fc.assert(
      fc.property(spoilt, (plan) => {
        expect(() => auditPlan(sampleProblem, plan)).not.toThrow();
      }),
    );
  });

  it("is malformed when it is no plan at all", () => {
    fc.assert(
      fc.property(hostile, (value) => {
        const found = auditPlan(sampleProblem, value as Plan);
        expect(found.map((violation) => violation.code)).toContain("malformed-plan");
      }),
      { numRuns: 1000 },
    );
  });
});
