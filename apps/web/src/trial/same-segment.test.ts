import type { PlannedLot, Segment } from "@formweek/scheduler";
import { describe, expect, it } from "vitest";
import { isSamePlanned, isSameSegment } from "./same-segment.ts";

const placed = { lineId: "L1", start: 100, end: 200 };
const segments: readonly Segment[] = [
  {
    ...placed,
    kind: "run",
    orderId: "A-1",
    lot: 0,
    productId: "P",
    setupId: "S",
    mould: { mouldId: "M", copy: 0 },
    pieces: 5000,
  },
  { ...placed, kind: "stop", reason: "closed", orderId: "A-1", lot: 0 },
  {
    ...placed,
    kind: "change",
    fromSetupId: "R",
    toSetupId: "S",
    changeSpec: 3,
    stripping: false,
    teamId: "T",
    trolleyId: null,
    mountStart: 120,
    tailStart: 180,
    mouldOut: null,
    mouldIn: { mouldId: "M", copy: 0 },
  },
];
const lot: PlannedLot = {
  orderId: "A-1",
  lot: 0,
  lineId: "L1",
  setupId: "S",
  pieces: 5000,
  start: 100,
  end: 200,
  finish: 260,
};

/** The same with each field in turn changed; what stands for nothing gets something. */
function changedOnce<Thing extends object>(thing: Thing): readonly (readonly [string, Thing])[] {
  return Object.entries(thing).map(([field, value]: [string, unknown]) => [
    field,
    { ...thing, [field]: otherThan(value) },
  ]);
}

function otherThan(value: unknown): unknown {
  if (typeof value === "number") return value + 1;
  if (typeof value === "string") return `${value}x`;
  if (typeof value === "boolean") return !value;
  return value === null ? { mouldId: "N", copy: 0 } : { ...(value as object), copy: 1 };
}

describe("what a trial need not write again", () => {
  it.each(segments.map((segment) => [segment.kind, segment] as const))(
    "knows a %s that is alike, and one with any other field",
    (_, segment) => {
      expect(isSameSegment(segment, structuredClone(segment))).toBe(true);
      for (const [field, other] of changedOnce(segment))
        expect([field, isSameSegment(segment, other)]).toEqual([field, false]);
    },
  );

  it("knows a lot that is alike, and one with any other field", () => {
    expect(isSamePlanned(lot, structuredClone(lot))).toBe(true);
    for (const [field, other] of changedOnce<PlannedLot>({ ...lot, turn: "gives way" }))
      expect([field, isSamePlanned({ ...lot, turn: "gives way" }, other)]).toEqual([field, false]);
  });
});
