import { describe, expect, it } from "vitest";
import { twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { favour } from "../index.ts";

const { objective } = twoMouldPlant({});

describe("prices that favour one thing", () => {
  it("leave its own price and that of orders left out, and lower all others to a fifth", () => {
    const late = favour(objective, "lateness");
    expect(late.tardinessPerWeightHour).toBe(objective.tardinessPerWeightHour);
    expect(late.unplannedPerWeight).toBe(objective.unplannedPerWeight);
    expect(late.changePerMachineHour).toBeCloseTo(objective.changePerMachineHour / 5, 12);
    const changes = favour(objective, "changes");
    expect(changes.changePerMachineHour).toBe(objective.changePerMachineHour);
    expect(changes.tardinessPerWeightHour).toBeCloseTo(objective.tardinessPerWeightHour / 5, 12);
    expect(changes.unplannedPerWeight).toBe(objective.unplannedPerWeight);
  });
});
