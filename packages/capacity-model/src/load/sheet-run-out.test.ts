import { describe, expect, it } from "vitest";
import { sheetRunOut } from "./sheet-run-out.ts";

const uses = [
  { at: 10, kg: 60 },
  { at: 20, kg: 60 },
  { at: 30, kg: 60 },
];

describe("a sheet that runs out", () => {
  it("says when, how much is missing, and when the next comes", () => {
    expect(sheetRunOut(100, [{ at: 35, kg: 500 }], uses)).toEqual({
      at: 20,
      missingKg: 80,
      nextArrivalAt: 35,
    });
    expect(sheetRunOut(100, [], uses)).toEqual({ at: 20, missingKg: 80, nextArrivalAt: null });
  });

  it("lasts where an arrival comes in time, at the very instant too", () => {
    expect(sheetRunOut(100, [{ at: 20, kg: 80 }], uses)).toBeNull();
    expect(sheetRunOut(100, [{ at: 20, kg: 79 }], uses)).toMatchObject({ at: 30, missingKg: 1 });
    expect(sheetRunOut(null, [], uses)).toBeNull();
    expect(sheetRunOut(180, [], uses)).toBeNull();
  });
});
