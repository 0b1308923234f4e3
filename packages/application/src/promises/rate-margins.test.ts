import { ProvenRate } from "@formweek/capacity-model";
import { demoPlant } from "@formweek/demo-plant";
import { describe, expect, it } from "vitest";
import { RateMargins } from "./rate-margins.ts";

const plant = demoPlant("calm");
const [proven] = plant.provenRates;
const unproven = { ...plant, provenRates: [] };

describe("the margin of a rate", () => {
  it("is none where the rate was proven, and says by how many reports", () => {
    const rate = new RateMargins(plant).rateOf(proven!);
    expect(rate).toMatchObject({
      cyclesPerMin: proven!.cyclesPerMin,
      basis: { kind: "proven", reports: proven!.reports },
    });
  });

  it("is a fixed share where too few rates of the plant were proven", () => {
    // common practice, no source: 10 % of spread; 1.645 is the 95 % quantile of the normal distribution (from memory)
    const rate = new RateMargins(unproven).rateOf(proven!);
    expect(rate?.basis).toEqual({
      kind: "computed",
      spreadShare: 0.1,
      marginShare: 0.1645,
      from: { kind: "rule" },
    });
  });

  it("is what the plant's own proven rates say of the model", () => {
    const computed = new RateMargins(unproven);
    // true running times 1.00, 1.05, 1.10, 1.15 and 1.20 of the computed ones: mean 1.1, sample deviation √0.00625
    const ratios = [1, 1.05, 1.1, 1.15, 1.2];
    const provenRates = plant.provenRates
      .slice(0, 5)
      .map((rate, index) =>
        ProvenRate.parse({ ...rate, cyclesPerMin: computed.rateOf(rate)!.cyclesPerMin / ratios[index]! }),
      );
    const { bias, spread, from } = new RateMargins({ ...plant, provenRates }).spread;
    expect([bias, spread]).toEqual([expect.closeTo(0.1, 6), expect.closeTo(Math.sqrt(0.00625), 6)]);
    expect(from).toEqual({ kind: "plant", rates: 5 });
  });

  it("is not there where the records give no rate", () => {
    expect(new RateMargins(plant).rateOf({ ...proven!, lineId: "nowhere" })).toBeNull();
  });
});
