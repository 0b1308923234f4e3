import { describe, expect, it } from "vitest";
import { calendarOfSpells } from "../problem/calendar.ts";
import { lineKnots } from "./line-knots.ts";

describe("the knots of a line's time", () => {
  it("end where the next spell begins: a run begun after the last priced time takes none of the closed time before it", () => {
    const knots = lineKnots(
      calendarOfSpells(
        [
          [0, 100],
          [1000, 1100],
        ],
        2000,
      ),
      50,
      200,
    );
    expect([...knots.work]).toEqual([0, 50, 100]);
    expect([...knots.from]).toEqual([0, 50, 100]);
    expect([...knots.to]).toEqual([0, 50, 1000]);
  });
});
