import { orderFaults, plantFaults } from "@formweek/capacity-model";
import { describe, expect, it } from "vitest";
import { DEMO_WEEKS, demoOrders, demoPlant, generatePlant } from "./index.ts";
import { makeableRates } from "./generator/plant-rates.ts";

describe("the demo plant", () => {
  it.each(DEMO_WEEKS)("hangs together in its %s week, and every product can be made", (week) => {
    const plant = demoPlant(week);
    expect(plantFaults(plant)).toEqual([]);
    expect(orderFaults(demoOrders(week), plant)).toEqual([]);
    expect([...makeableRates(plant)].filter(([, rates]) => rates.length === 0)).toEqual([]);
    expect(plant.lines).toHaveLength(8);
    expect(plant.sheets).toHaveLength(12);
    expect(plant.setterTeams).toHaveLength(2);
    expect(plant.moulds.some(({ copies }) => copies > 1)).toBe(true);
  });

  it("is busier in the full week than in the calm one, and loses a line in the breakdown week", () => {
    expect(demoOrders("full").length).toBeGreaterThan(demoOrders("calm").length);
    expect(demoOrders("breakdown")).toEqual(demoOrders("full"));
    expect(demoPlant("breakdown").lineClosures).toHaveLength(1);
    expect(demoPlant("full").lineClosures).toEqual([]);
  });
});

describe("generated plants", () => {
  it.each([
    [1, 5],
    [4, 40],
    [10, 200],
    [40, 2000],
  ])("of %i lines and %i orders hang together", (lines, orders) => {
    const generated = generatePlant({ lines, orders, seed: 7 });
    expect(plantFaults(generated.plant)).toEqual([]);
    expect(orderFaults(generated.orders, generated.plant)).toEqual([]);
    expect(generated.plant.lines).toHaveLength(lines);
    expect(generated.orders).toHaveLength(orders);
  });

  it("follow their seed", () => {
    const drawn = (seed: number) => generatePlant({ lines: 4, orders: 40, seed });
    expect(drawn(3)).toEqual(drawn(3));
    expect(drawn(3).orders).not.toEqual(drawn(4).orders);
  });
});
