import fc from "fast-check";
import { expect, it } from "vitest";
import { cleanName, longestName } from "./planner-name.ts";

it("leaves a name that can be sent, whatever was typed", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 120 }), (typed) => {
      const name = cleanName(typed);
      expect([...name].length).toBeLessThanOrEqual(longestName);
      expect(name).toBe(name.trim());
      expect(name).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
      expect(decodeURIComponent(encodeURIComponent(name))).toBe(name);
      expect(cleanName(name)).toBe(name);
    }),
  );
});

it("keeps what a name may hold", () => {
  expect(cleanName("  Zoë <b>O’Neil</b> ")).toBe("Zoë <b>O’Neil</b>");
});
