import { describe, expect, it } from "vitest";
import { missingHeader } from "./pasted-header.ts";

describe("the header of pasted rows", () => {
  it("is missing where the first row holds numbers", () => {
    expect(missingHeader([["101", "Cup 200", "40,000", "2026-12-05"]])).toEqual([
      "order",
      "product",
      "pieces",
      "due",
    ]);
    const six = ["A-1", "Alder Foods", "Cup 200", "40000", "2026-12-05", "2026-12-01"];
    expect(missingHeader([six])).toEqual(["order", "customer", "product", "pieces", "due", "earliest start"]);
  });

  it("is there where the first row is words, whatever follows", () => {
    expect(
      missingHeader([
        ["Order", "Product", "Pieces", "Due"],
        ["101", "Cup", "5", "1.12."],
      ]),
    ).toBeNull();
  });

  it("cannot be guessed for other numbers of columns", () => {
    expect(missingHeader([])).toBeNull();
    expect(missingHeader([["101", "Cup", "5"]])).toBeNull();
    expect(missingHeader([Array<string>(12).fill("1")])).toBeNull();
  });
});
