import { describe, expect, it } from "vitest";
import { missingEnquiryHeader } from "./enquiry-header.ts";

describe("missingEnquiryHeader", () => {
  it("gives bare rows the header of as many columns as they have", () => {
    expect(missingEnquiryHeader([["T95 white", "40 000"]])).toEqual(["product", "pieces"]);
    expect(missingEnquiryHeader([["T95 white", "40k", "2026-12-04"]])).toEqual([
      "product",
      "pieces",
      "wanted",
    ]);
  });

  it("leaves rows with a header, and no rows, as they are", () => {
    expect(
      missingEnquiryHeader([
        ["product", "pieces"],
        ["T95 white", "5"],
      ]),
    ).toBeNull();
    expect(missingEnquiryHeader([])).toBeNull();
  });
});
