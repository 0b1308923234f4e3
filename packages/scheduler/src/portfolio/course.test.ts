import { describe, expect, it } from "vitest";
import type { StopReason } from "../result.ts";
import { PortfolioCourse, type NextMove, type Standing } from "./course.ts";
import { exchange } from "./exchange.ts";
import { roundAt, roundCount } from "./round.ts";

const budget = { seed: 1, maxSteps: 1000, maxMs: null, members: 3 };

function standing(member: number, money: number, ended: StopReason = "steps"): Standing {
  const elite = {
    at: [Int32Array.of(member)],
    length: Int32Array.of(1),
    pieces: Float64Array.of(1),
    turn: Uint8Array.of(0),
    drawn: null,
  };
  return { member, money, elite, steps: 10, evaluations: 20, ended };
}

/** Who takes over whose plan: the marks that `standing` gave them. */
const takes = (move: NextMove) =>
  move.kind === "round" ? move.adoptions.map(({ member, elite }) => [member, elite.at[0]![0]]) : null;

describe("the exchange", () => {
  it("takes the better plan of the neighbour in the ring, no other", () => {
    expect(exchange([5, 7, 6])).toEqual([null, 0, null]);
    expect(exchange([7, 5, 6])).toEqual([2, null, 1]);
  });
  it("leaves equal plans and rounding alone, and a member by itself", () => {
    expect(exchange([1e6, 1e6 + 1e-4])).toEqual([null, null]);
    expect(exchange([3])).toEqual([null]);
  });
});

describe("rounds", () => {
  it("of a step budget share it out whole and in order", () => {
    const ends = Array.from({ length: roundCount(budget) }, (_, r) => roundAt(budget, r, 0).toStep ?? 0);
    expect(ends).toEqual([...ends].sort((a, b) => a - b));
    expect(ends.at(-1)).toBe(1000);
  });
  it("of a time budget take an equal part of what is left, and the last all of it", () => {
    const timed = { ...budget, maxSteps: null, maxMs: 2400 };
    expect(roundAt(timed, 0, 0).ms).toBeCloseTo(2400 / roundCount(timed), 9);
    const last = roundAt(timed, roundCount(timed) - 1, 2000);
    expect(last).toMatchObject({ ms: 400, toShare: 1 });
    expect(roundAt(timed, 3, 9999)).toMatchObject({ ms: 0, fromShare: 1 });
  });
  it("are one for a search alone", () => {
    expect(roundCount({ ...budget, members: 1 })).toBe(1);
  });
});

describe("the course", () => {
  it("hands plans on after a round, whatever order the standings come in", () => {
    const course = new PortfolioCourse(budget);
    expect(takes(course.first(0))).toEqual([]);
    const move = course.next([standing(2, 6), standing(0, 7), standing(1, 5)], 0);
    expect(takes(move)).toEqual([
      [0, 2],
      [2, 1],
    ]);
  });
  it("ends with the cheapest plan, ties to the lower member, and the work of all", () => {
    const course = new PortfolioCourse(budget);
    let move = course.first(0);
    let rounds = 0;
    for (; move.kind === "round"; rounds++)
      move = course.next([standing(0, 9), standing(1, 5), standing(2, 5)], 0);
    expect(rounds).toBe(roundCount(budget));
    expect(move.winner).toEqual({ member: 1, stopped: "steps", steps: 30, evaluations: 60 });
  });
  it.each(["cancelled", "optimal", "time"] as const)("ends at once when a member ended with %s", (ended) => {
    const course = new PortfolioCourse(budget);
    course.first(0);
    const move = course.next([standing(0, 9), standing(1, 8, ended), standing(2, 7)], 0);
    expect(move).toMatchObject({ kind: "finish", winner: { stopped: ended, member: 2 } });
  });
});
