import { describe, expect, it } from "vitest";
import type { ChangeoverRules } from "../plant/changeover-rules.ts";
import type { Mould } from "../plant/mould.ts";
import { changeBetween } from "./change-between.ts";
import { A, B, product, request, rules, sheet, white } from "./change-examples.ts";
import { EMPTY_LINE, stateToMake } from "./line-state.ts";
import type { LineState } from "./line-state.ts";

describe("CV-55 colour sequencing", () => {
  // Source: derived matrix: 10 min per shade lighter to darker, 30 min per shade back, mould change 60 min.
  const test: ChangeoverRules = {
    ...rules,
    mouldClasses: [{ name: "all", upToMassKg: null, dismountMinutes: 30, mountMinutes: 30 }],
    trimSetMinutes: 0,
    spliceMinutes: 0,
    firstPieceCheckMinutes: 0,
    colourStepRanks: 1,
  };
  const shades = [1, 2, 3, 4].map((shade) => sheet(`shade ${shade}`, {}, shade));
  const state = (which: Mould, shade: number): LineState =>
    stateToMake({ product, mould: which, insertId: null, sheet: shades[shade - 1] ?? white });

  function permutations<Item>(items: readonly Item[]): readonly (readonly Item[])[] {
    if (items.length < 2) return [items];
    return items.flatMap((item, index) =>
      permutations(items.filter((_, other) => other !== index)).map((rest) => [item, ...rest]),
    );
  }

  /** Minutes of all changes on the way: as the line stands, or all tasks one after the other. */
  function minutesAlong(states: readonly LineState[], rule: "longest path" | "sum"): number {
    return states.slice(1).reduce((total, to, index) => {
      const result = changeBetween(request(states[index] ?? EMPTY_LINE, to, { rules: test }));
      if (result === null) return total;
      const sum = result.tasks.reduce((all, task) => all + task.minutes, 0);
      return total + (rule === "sum" ? sum : result.machineSeconds / 60);
    }, 0);
  }

  it("costs 30 from the lightest, 90 from shade 3, 120 round the cycle", () => {
    const best = (first: number): number =>
      Math.min(
        ...permutations([1, 2, 3, 4]).map((order) =>
          minutesAlong(
            [first, ...order].map((shade) => state(A, shade)),
            "sum",
          ),
        ),
      );
    expect([best(1), best(3)]).toEqual([30, 90]);
    expect(
      minutesAlong(
        [1, 2, 3, 4, 1].map((shade) => state(A, shade)),
        "sum",
      ),
    ).toBe(120);
  });

  it("orders four jobs best at 110 in a row and at 90 side by side", () => {
    const jobs = [
      { name: "J1", state: state(A, 1) },
      { name: "J2", state: state(B, 3) },
      { name: "J3", state: state(A, 2) },
      { name: "J4", state: state(B, 1) },
    ];
    const outcomes = (rule: "longest path" | "sum"): readonly (readonly [number, string])[] =>
      permutations(jobs)
        .map(
          (order) =>
            [
              minutesAlong(
                order.map((job) => job.state),
                rule,
              ),
              order.map((job) => job.name).join("-"),
            ] as const,
        )
        .sort(([a], [b]) => a - b);
    const inRow = outcomes("sum");
    expect([inRow[0], inRow.at(-1)]).toEqual([
      [110, "J3-J1-J4-J2"],
      [260, "J4-J3-J2-J1"],
    ]);
    const sideBySide = outcomes("longest path");
    expect(new Set(sideBySide.filter(([cost]) => cost === 90).map(([, order]) => order))).toEqual(
      new Set(["J1-J3-J4-J2", "J4-J2-J1-J3"]),
    );
    expect([sideBySide[0]?.[0], sideBySide.at(-1)?.[0]]).toEqual([90, 180]);
  });
});
