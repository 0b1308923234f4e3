import { describe, expect, test } from "vitest";
import { sortableIds } from "./ids.ts";

describe("sortable ids", () => {
  test("have the fields of a UUID of version 7 (RFC 9562, section 5.7)", () => {
    // The instant of RFC 9562, appendix A.6: 2022-02-22T19:22:22.000Z is 0x017F22E279B0.
    const id = sortableIds(() => 0x017f22e279b0).next();
    expect(id).toMatch(/^017f22e2-79b0-7000-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });

  test("of one process sort in the order of making, through a standing clock and one that runs back", () => {
    const times = [5000, 5000, 5001, 4000, 4000, 9000];
    let calls = 0;
    const ids = sortableIds(() => times[Math.min(calls++, times.length - 1)] ?? 0);
    const made = Array.from({ length: 10_000 }, () => ids.next());
    expect(made.toSorted((a, b) => (a < b ? -1 : 1))).toEqual(made);
    expect(new Set(made).size).toBe(made.length);
  });
});
