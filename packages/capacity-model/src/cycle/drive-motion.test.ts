import { describe, expect, it } from "vitest";
import { CAM_LAWS, camMove, trapezoidSeconds } from "./drive-motion.ts";
import { openTimeFaults, openTimeOf } from "./open-time.ts";
import { WORKED_EXAMPLE } from "./worked-example.ts";

const INDEX = { speedMPerS: 2, accelerationMPerS2: 20 };
const PLATEN = { speedMPerS: 1.2, accelerationMPerS2: 15 };

describe("drive times", () => {
  it("CV-09 trapezoid long", () => {
    // textbook, derived; 1e-6
    expect(trapezoidSeconds(0.52, INDEX)).toBeCloseTo(0.36, 6);
  });

  it("CV-10 trapezoid short (triangular)", () => {
    // textbook, derived; 1e-4
    expect(Math.abs(trapezoidSeconds(0.15, INDEX) / 0.17321 - 1)).toBeLessThan(1e-4);
  });

  it("has no step where the top speed is just reached, and no time for no way", () => {
    // derived: d = v²/a gives 2v/a in both forms
    expect(trapezoidSeconds(0.2, INDEX)).toBeCloseTo(0.2, 12);
    expect(trapezoidSeconds(0.2 - 1e-9, INDEX)).toBeCloseTo(0.2, 6);
    expect(trapezoidSeconds(0, INDEX)).toBe(0);
    expect(camMove("cycloidal", 0, 20)).toEqual({ seconds: 0, peakSpeedMPerS: 0 });
  });

  it("CV-11 modified sine", () => {
    // Cv 1.76 and Ca 5.53 read on a public cam-design page, also in VDI 2143 (from memory); time and speed derived; 1e-3
    const { seconds, peakSpeedMPerS } = camMove("modified sine", 0.52, 20);
    expect(Math.abs(seconds / 0.3791 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(peakSpeedMPerS / 2.414 - 1)).toBeLessThan(1e-3);
    expect(CAM_LAWS["modified sine"].speedFactor).toBeCloseTo(1.76, 2);
    expect(CAM_LAWS["modified sine"].accelerationFactor).toBeCloseTo(5.53, 2);
  });

  it("orders the motion laws as cam design does", () => {
    // Norton, cam design (from memory): Ca 4.888 modified trapezoid, 6.283 cycloidal; times derived
    const seconds = (law: keyof typeof CAM_LAWS) => camMove(law, 0.52, 20).seconds;
    expect(seconds("constant acceleration")).toBeCloseTo(0.3225, 4);
    expect(seconds("modified trapezoid")).toBeCloseTo(0.3565, 4);
    expect(seconds("cycloidal")).toBeCloseTo(0.4042, 4);
    expect(CAM_LAWS["modified trapezoid"].accelerationFactor).toBeCloseTo(4.888, 3);
  });
});

describe("open time", () => {
  const table = {
    kind: "table" as const,
    rows: [
      { depthMm: 100, openSeconds: 1.4 },
      { depthMm: 20, openSeconds: 1 },
      { depthMm: 180, openSeconds: 2 },
    ],
  };
  const open = (depthMm: number, model: Parameters<typeof openTimeOf>[0] = table) =>
    openTimeOf(model, { depthMm, indexLengthMm: 520 });

  it("grows with depth by the drives", () => {
    // derived: opening + closing for depths of 40 … 180 mm, stroke 2 × depth + 40 mm
    const rows = [
      [40, 0.36],
      [60, 0.427],
      [90, 0.527],
      [120, 0.627],
      [180, 0.827],
    ] as const;
    for (const [depth, seconds] of rows)
      expect(2 * trapezoidSeconds((2 * depth + 40) / 1000, PLATEN)).toBeCloseTo(seconds, 3);
  });

  it("runs straight between the rows of a handling table, in whatever order they stand", () => {
    expect(open(20)).toEqual({ kind: "table", openSeconds: 1, beyondTable: false });
    expect(open(60).openSeconds).toBeCloseTo(1.2, 12);
    expect(open(140).openSeconds).toBeCloseTo(1.7, 12);
    expect(open(180)).toEqual({ kind: "table", openSeconds: 2, beyondTable: false });
  });

  it("keeps the first row below it and the last slope above it, and says so", () => {
    expect(open(5)).toEqual({ kind: "table", openSeconds: 1, beyondTable: true });
    expect(open(220).openSeconds).toBeCloseTo(2.3, 12);
    expect(open(220)).toMatchObject({ beyondTable: true });
    expect(open(300, { kind: "table", rows: [{ depthMm: 50, openSeconds: 1.1 }] }).openSeconds).toBe(1.1);
  });

  it("adds the longer of index and ejection between opening and closing, less the overlap", () => {
    const drives = WORKED_EXAMPLE.line.openTime;
    if (drives.kind !== "drives") throw new Error("the worked example has drives");
    expect(open(60, drives).openSeconds).toBeCloseTo(0.78667, 5);
    expect(open(60, { ...drives, ejectSeconds: 0.5 }).openSeconds).toBeCloseTo(0.92667, 5);
    expect(open(60, { ...drives, overlapSeconds: 0.1 }).openSeconds).toBeCloseTo(0.68667, 5);
  });

  it("refuses a table that falls and an overlap longer than the moves", () => {
    const move = { depthMm: 60, indexLengthMm: 520 };
    const falling = { kind: "table" as const, rows: [...table.rows, { depthMm: 190, openSeconds: 1.9 }] };
    expect(openTimeFaults(table, move)).toEqual([]);
    expect(openTimeFaults(falling, move)).toMatchObject([
      { code: "handling-table-falls", numbers: { depthMm: 190, openSeconds: 1.9 } },
    ]);
    const drives = WORKED_EXAMPLE.line.openTime;
    if (drives.kind !== "drives") throw new Error("the worked example has drives");
    expect(openTimeFaults({ ...drives, overlapSeconds: 0.36 }, move)).toEqual([]);
    expect(openTimeFaults({ ...drives, overlapSeconds: 0.37 }, move)).toMatchObject([
      { code: "overlap-longer-than-move" },
    ]);
  });
});
