import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  emptyDraft,
  enquiryOf,
  readEnquiryAddress,
  readPieces,
  writeEnquiryAddress,
} from "./enquiry-draft.ts";

describe("readPieces", () => {
  it.each([
    ["40000", 40_000],
    [" 40 000 ", 40_000],
    ["40\u202f000", 40_000],
    ["40,000", 40_000],
    ["40.000", 40_000],
    ["1.185.000", 1_185_000],
    ["40k", 40_000],
    ["2,5K", 2_500],
    ["1.250k", 1_250],
    ["1.2m", 1_200_000],
    ["7", 7],
  ])("reads %j as %i", (typed, pieces) => {
    expect(readPieces(typed)).toBe(pieces);
  });

  it.each(["", "0", "-5", "2.5", "40.00", "many", "1e6", "1,000,00", "2000000000", "1.0005k"])(
    "takes %j for no number of pieces",
    (typed) => {
      expect(readPieces(typed)).toBeNull();
    },
  );
});

describe("enquiryOf", () => {
  it("says nothing until product and pieces are there", () => {
    expect(enquiryOf({ ...emptyDraft, pieces: "5" }, null)).toBeNull();
    expect(enquiryOf({ ...emptyDraft, pieces: "" }, "P")).toBeNull();
  });

  it("joins day and time, and lets the day stand alone", () => {
    const draft = { ...emptyDraft, pieces: "40k", day: "2026-12-04" };
    expect(enquiryOf(draft, "P")).toEqual({
      product: "P",
      pieces: 40_000,
      wanted: "2026-12-04",
      partsAllowed: false,
    });
    expect(enquiryOf({ ...draft, time: "06:00" }, "P")?.wanted).toBe("2026-12-04T06:00");
    expect(enquiryOf({ ...draft, day: "", time: "06:00" }, "P")?.wanted).toBeNull();
  });
});

describe("address of an enquiry", () => {
  it("comes back as it was written, beside what else is there", () => {
    fc.assert(
      fc.property(
        fc.record({
          product: fc.string({ maxLength: 20 }),
          pieces: fc.string({ maxLength: 8 }),
          day: fc.constantFrom("", "2026-12-04"),
          partsAllowed: fc.boolean(),
        }),
        fc.constantFrom("", "06:00"),
        (typed, time) => {
          const draft = { ...typed, time: typed.day === "" ? "" : time };
          const address = writeEnquiryAddress(draft, new URLSearchParams("other=1&pieces=9"));
          expect(readEnquiryAddress(new URLSearchParams(address.toString()))).toEqual(draft);
          expect(address.get("other")).toBe("1");
        },
      ),
    );
  });

  it("does not mind a day that is none", () => {
    expect(readEnquiryAddress(new URLSearchParams("wanted=soon&parts=yes"))).toEqual(emptyDraft);
  });
});
