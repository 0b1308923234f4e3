import { describe, expect, it } from "vitest";
import { ProvenRate } from "../plant/product.ts";
import { cycleWithout } from "./cycle-questions.ts";
import { formingRate } from "./forming-rate.ts";
import type { FormingRate } from "./forming-rate.ts";
import { machineCycle } from "./machine-cycle.ts";
import type { CycleInputs, MachineCycle } from "./machine-cycle.ts";
import { cyclesPerMinFor, flowCycleSeconds, hourlyOutput, shotOf } from "./shot.ts";
import { WORKED_EXAMPLE, exampleWith, soundCycle } from "./worked-example.ts";

function rateOf(inputs: CycleInputs, provenRates: readonly ProvenRate[] = []): FormingRate {
  const rate = formingRate({ ...inputs, provenRates });
  if (rate.kind !== "rate") throw new Error(rate.faults.map((fault) => fault.cause).join(" "));
  return rate;
}

function station(cycle: MachineCycle): number {
  return cycle.limits.find((limit) => limit.code === "station")?.cycleSeconds ?? NaN;
}

const SHOT = { cavities: 33, sheetKg: 0.5, netKg: 0.3, skeletonShare: 0.4 };

describe("pieces and kilograms", () => {
  it("CV-01 pieces/h identity", () => {
    // trade article on cups Ø 94 mm: 33 cavities, 32 cycles/min, "over 63,000"
    expect(hourlyOutput(SHOT, 32, 0).piecesPerH).toBe(63_360);
  });

  it("CV-02 cycles/min from 80,000 pieces/h of 35 cavities", () => {
    // trade article on water cups; quotient derived; 1e-4
    expect(Math.abs(cyclesPerMinFor(80_000, 35) / 38.095 - 1)).toBeLessThan(1e-4);
  });

  it("CV-03 cycles/min from 120,000 pieces/h of 54 cavities", () => {
    // trade news item on cup moulds; quotient derived; 1e-4
    expect(Math.abs(cyclesPerMinFor(120_000, 54) / 37.037 - 1)).toBeLessThan(1e-4);
  });

  it("CV-04 net and gross kg/h", () => {
    // trade article: 80,000/h of 3.2 g with 36 % scrap; 256 and 400 kg/h derived
    const netKg = (35 * 3.2) / 1000;
    const shot = { cavities: 35, netKg, sheetKg: netKg / 0.64, skeletonShare: 0.36 };
    const output = hourlyOutput(shot, cyclesPerMinFor(80_000, 35), 0);
    expect(output.piecesPerH).toBeCloseTo(80_000, 8);
    expect(output.netKgPerH).toBeCloseTo(256, 9);
    expect(output.sheetKgPerH).toBeCloseTo(400, 9);
  });

  it("CV-05 extruder cap", () => {
    // extruder capacity from a trade article; shot and cap derived; 1e-4
    const shot = shotOf(exampleWith({ sheet: { thicknessMm: 1.2 } }));
    expect(Math.abs(shot.sheetKg / 0.52519 - 1)).toBeLessThan(1e-4);
    expect(Math.abs(60 / flowCycleSeconds(shot.sheetKg, 1096) / 34.781 - 1)).toBeLessThan(1e-4);
  });

  it("gives the skeleton as the part of the shot that is no piece", () => {
    const { shot } = rateOf(WORKED_EXAMPLE);
    // derived: 0.43766 kg per shot, 54 × 4.5 g
    expect(shot.sheetKg).toBeCloseTo(0.43766, 5);
    expect(shot.skeletonShare).toBeCloseTo(1 - 0.243 / 0.43766, 5);
  });

  it("takes the run scrap off the good pieces only", () => {
    const rate = rateOf(WORKED_EXAMPLE);
    expect(rate.piecesPerH).toBeCloseTo(30 * 60 * 54, 6);
    expect(rate.goodPiecesPerH).toBeCloseTo(30 * 60 * 54 * 0.98, 6);
    expect(rate.netKgPerH).toBeCloseTo((rate.goodPiecesPerH * 4.5) / 1000, 6);
    expect(rate.sheetKgPerH).toBeCloseTo(rate.shot.sheetKg * 30 * 60, 6);
  });
});

describe("the worked cycle", () => {
  /** The printed totals add a stabilising time of 0.920 s, not the 0.923 s of the series; this factor reproduces it. */
  const printed = (depthMm: number) =>
    soundCycle(exampleWith({ mould: { depthMm, calibrationFactor: 0.92 / 0.922877 } }));

  it("CV-07 full example, depth 60", () => {
    // derived; 1e-3
    const cycle = printed(60);
    expect(Math.abs(station(cycle) / 1.8867 - 1)).toBeLessThan(1e-3);
    expect(cycle.limit.code).toBe("oven");
    expect(cycle.cyclesPerMin).toBeCloseTo(30, 9);
    expect(cycle.limit.overNextShare).toBeCloseTo(2 / station(cycle) - 1, 9);
  });

  it("CV-08 full example, depth 120", () => {
    // derived; 1e-3
    const cycle = printed(120);
    expect(Math.abs(cycle.cycleSeconds / 2.0867 - 1)).toBeLessThan(1e-3);
    expect(cycle.limit.code).toBe("station");
    expect(Math.abs(cycle.cyclesPerMin / 28.75 - 1)).toBeLessThan(1e-3);
  });

  it("adds up from its parts with the stabilising time of the series", () => {
    // derived: 0.10 + 0.9229 + 0.08 + 0.7867
    const cycle = soundCycle(WORKED_EXAMPLE);
    expect(cycle.parts.stabiliseSeconds).toBe(0.922877);
    expect(cycle.parts.closedSeconds + cycle.parts.open.openSeconds).toBe(station(cycle));
    expect(station(cycle)).toBeCloseTo(1.88954, 5);
    expect(cycle.parts.heatingSeconds).toBeCloseTo(14, 12);
    expect(cycle.parts.ovenPositions).toBe(7);
    expect(cycle.limits.map((limit) => limit.code)).toEqual([
      "station",
      "oven",
      "sheet-flow",
      "stacker",
      "line-dry-cycle",
      "mould-cycle",
    ]);
  });

  it.each([
    ["sheet-flow", { line: { extruderFlowKgPerH: 600 } }],
    ["stacker", { line: { stackerMaxCyclesPerMin: 20 } }],
    ["line-dry-cycle", { line: { maxDryCyclesPerMin: 20 } }],
    ["mould-cycle", { mould: { maxCyclesPerMin: 20 } }],
    ["rim-rolling", { product: { rimRolled: true }, line: { rimRollingMaxCyclesPerMin: 20 } }],
    ["station", { mould: { contactConductanceWPerM2K: 300 } }],
  ] as const)("names %s when it is the slowest", (code, change) => {
    expect(soundCycle(exampleWith(change)).limit.code).toBe(code);
  });

  it("leaves rim rolling and the extruder out where they do not apply", () => {
    const codes = (inputs: CycleInputs) => soundCycle(inputs).limits.map((limit) => limit.code);
    expect(codes(exampleWith({ line: { rimRollingMaxCyclesPerMin: 1 } }))).not.toContain("rim-rolling");
    expect(codes(exampleWith({ line: { extruderFlowKgPerH: null } }))).not.toContain("sheet-flow");
  });

  it("lies in the published range of rates for cups", () => {
    // common practice, no source: PS and PP cups 28 to 40 cycles/min
    const cup = soundCycle(
      exampleWith({
        line: { openTime: { kind: "table", rows: [{ depthMm: 100, openSeconds: 1 }] } },
        mould: { calibrationFactor: 0.7 },
      }),
    );
    const { cyclesPerMin } = cycleWithout(cup, "oven") ?? { cyclesPerMin: NaN };
    expect(cyclesPerMin).toBeGreaterThan(28);
    expect(cyclesPerMin).toBeLessThan(40);
  });
});

describe("proven rate and performance", () => {
  const proven = (cyclesPerMin: number, reports: number, productId = "product") =>
    ProvenRate.parse({
      lineId: "line",
      mouldId: "mould",
      productId,
      cyclesPerMin,
      reports,
      spreadCyclesPerMin: 0.4,
    });

  it("lets the proven rate win, says so and keeps the computed one beside it", () => {
    const rate = rateOf(exampleWith({ line: { performanceFactor: 0.9 } }), [
      proven(26.5, 4),
      proven(27.5, 12),
    ]);
    expect(rate.basis).toMatchObject({
      kind: "proven",
      provenRate: { reports: 12 },
      cycle: { kind: "cycle", limit: { code: "oven" } },
    });
    expect(rate.cyclesPerMin).toBe(27.5);
    expect(rate.piecesPerH).toBe(27.5 * 60 * 54);
  });

  it("ignores rates of other products and takes the first of equals", () => {
    expect(rateOf(WORKED_EXAMPLE, [proven(20, 50, "other")]).basis.kind).toBe("computed");
    expect(rateOf(WORKED_EXAMPLE, [proven(27, 5), proven(28, 5)]).cyclesPerMin).toBe(27);
  });

  it("applies the performance factor to the computed rate and states it", () => {
    const rate = rateOf(exampleWith({ line: { performanceFactor: 0.9 } }));
    expect(rate.cyclesPerMin).toBeCloseTo(27, 9);
    expect(rate.basis).toMatchObject({
      kind: "computed",
      performanceFactor: 0.9,
    });
  });

  it("plans with a proven rate even where the model cannot compute one", () => {
    const tooLong = exampleWith({ line: { oven: { heatedLengthMm: 300, maxNetFluxKwPerM2: 20 } } });
    expect(formingRate({ ...tooLong, provenRates: [] })).toMatchObject({
      kind: "impossible",
      faults: [{ code: "index-longer-than-oven" }],
    });
    const rate = rateOf(tooLong, [proven(25, 3)]);
    expect(rate.cyclesPerMin).toBe(25);
    expect(rate.basis.cycle.kind).toBe("impossible");
  });
});

describe("impossible inputs", () => {
  it.each([
    ["polymer-not-the-sheets", { sheet: { polymer: "PS" } }],
    ["net-mass-above-shot", { product: { netMassG: 9 } }],
    ["wall-thicker-than-sheet", { product: { wallThicknessMm: 1.01 } }],
    ["forming-not-above-demould", { polymer: { demouldMeanTemperatureC: 160 } }],
    ["demould-not-above-mould", { polymer: { mouldTemperatureC: 70 } }],
    ["index-longer-than-oven", { line: { oven: { heatedLengthMm: 519, maxNetFluxKwPerM2: 20 } } }],
    ["oven-flux-beyond-radiation", { line: { oven: { heatedLengthMm: 4000, maxNetFluxKwPerM2: 120 } } }],
    ["cycle-beyond-an-hour", { mould: { contactConductanceWPerM2K: 1e-300 } }],
    ["cycle-beyond-an-hour", { line: { extruderFlowKgPerH: Number.MIN_VALUE } }],
    ["cycle-beyond-an-hour", { mould: { formSeconds: 4000 } }],
  ] as const)("%s is a value with cause, remedy and finite numbers", (code, change) => {
    const cycle = machineCycle(exampleWith(change));
    if (cycle.kind !== "impossible") throw new Error("expected no cycle");
    const fault = cycle.faults[0];
    expect(cycle.faults.map((each) => each.code)).toContain(code);
    expect(fault.cause.length).toBeGreaterThan(20);
    expect(fault.remedy.length).toBeGreaterThan(20);
    for (const number of Object.values(fault.numbers)) expect(Number.isFinite(number)).toBe(true);
  });

  it("reports every contradiction at once", () => {
    const cycle = machineCycle(
      exampleWith({ product: { netMassG: 9, wallThicknessMm: 3 }, polymer: { mouldTemperatureC: 90 } }),
    );
    expect(cycle).toMatchObject({
      faults: [
        { code: "net-mass-above-shot" },
        { code: "wall-thicker-than-sheet" },
        { code: "demould-not-above-mould" },
      ],
    });
  });
});
