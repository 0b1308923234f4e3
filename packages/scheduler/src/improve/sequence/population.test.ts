import { describe, expect, it } from "vitest";
import { createRandom } from "../../chance/random.ts";
import { Population } from "./population.ts";

const member = (money: number) => ({ sequence: Int32Array.of(money), money });

describe("a population of sequences", () => {
  it("takes in what is new, and when full only what is better than its worst, which leaves", () => {
    const population = new Population(3);
    expect([5, 7, 5, 9].map((money) => population.add(member(money)))).toEqual([true, true, false, true]);
    expect(population.isFull).toBe(true);
    expect([12, 7, 6, 8].map((money) => population.add(member(money)))).toEqual([false, false, true, false]);
    population.clear();
    expect(population.isFull).toBe(false);
    expect(population.add(member(12))).toBe(true);
  });
  it("pairs two different members, each in its turn", () => {
    const population = new Population(3);
    for (const money of [1, 2, 3]) population.add(member(money));
    const random = createRandom(7);
    const seen = new Set<string>();
    for (let times = 0; times < 200; times++) {
      const [a, b] = population.pair(random.below);
      expect(a.money).not.toBe(b.money);
      seen.add(`${a.money} ${b.money}`);
    }
    expect(seen.size).toBe(6);
  });
});
