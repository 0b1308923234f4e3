import type { RateEntry } from "@formweek/contracts";
import { describe, expect, it } from "vitest";
import { refusedLines } from "./refused-lines.ts";

const rate: NonNullable<RateEntry["rate"]> = {
  cyclesPerMin: 20,
  piecesPerHour: 28_800,
  sheetKgPerHour: 400,
  skeletonShare: 0.3,
  proven: false,
  limit: { name: "heating", text: "Heating limits", byShare: null },
  parts: {},
};
const entry = (productId: string, lineId: string, reason: string | null): RateEntry => ({
  productId,
  lineId,
  mouldId: "M1",
  fits: reason === null,
  rate: reason === null ? rate : null,
  refusals: reason === null ? [] : [{ code: "too-long", text: reason, numbers: {}, compared: null }],
});

describe("refusedLines", () => {
  it("refuses a line only when no mould of the product runs there, with the first reason", () => {
    const refused = refusedLines([
      entry("cup", "L1", "Too long."),
      entry("cup", "L1", "Too heavy."),
      entry("cup", "L2", "Too long."),
      entry("cup", "L2", null),
      entry("cup", "L3", null),
      entry("cup", "L3", "Too long."),
      entry("tray", "L2", "Too deep."),
    ]);
    expect([...(refused.get("cup") ?? [])]).toMatchObject([["L1", { text: "Too long." }]]);
    expect([...(refused.get("tray") ?? [])]).toMatchObject([["L2", { text: "Too deep." }]]);
    expect(refused.get("lid")).toBeUndefined();
  });
});
