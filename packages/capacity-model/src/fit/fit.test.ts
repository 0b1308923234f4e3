import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { WORKED_EXAMPLE, exampleWith } from "../cycle/worked-example.ts";
import type { ExampleChange } from "../cycle/worked-example.ts";
import { InsertId, LineId, MouldId, SheetId } from "../plant/scalars.ts";
import { areaUtilisation, fullestLayout, squareLayout, staggeredLayout } from "./cavity-layout.ts";
import { fitOf } from "./fit.ts";
import type { FitInputs } from "./fit.ts";
import { cutLengthMm, formingAirForceKn, tonnesForceKn, trimForceKn } from "./forces.ts";

const against = (inputs: FitInputs) => fitOf(inputs).against.map((check) => check.code);

describe("forces", () => {
  it("CV-20 trim force", () => {
    // derived: 54 rims of 80 mm, 1.0 mm, 40 MPa; 1e-3
    const length = cutLengthMm(WORKED_EXAMPLE.mould);
    expect(Math.abs(length / 1000 / 13.57 - 1)).toBeLessThan(1e-3);
    const force = trimForceKn({ cutLengthMm: length, thicknessMm: 1, shearStrengthMpa: 40, hotFactor: 1 });
    expect(Math.abs(force / 542.9 - 1)).toBeLessThan(1e-3);
  });

  it("CV-21 lock force", () => {
    // derived: 6 bar on 880 × 520 mm
    expect(formingAirForceKn(6, 88 * 52)).toBe(274.56);
    expect(formingAirForceKn(5, 88 * 52)).toBeCloseTo(228.8, 9);
  });

  it("meets the second worked cut and lowers it for a warm one", () => {
    // derived: 35 rims of 75 mm, 1.2 mm, 35 MPa → 346.4 kN; warm factor 0.6 to 0.9 common practice, no source
    const cut = { cutLengthMm: 35 * Math.PI * 75, thicknessMm: 1.2, shearStrengthMpa: 35, hotFactor: 1 };
    expect(trimForceKn(cut)).toBeCloseTo(346.4, 1);
    expect(trimForceKn({ ...cut, hotFactor: 0.75 })).toBeCloseTo(346.4 * 0.75, 1);
  });

  it("a press of 80 t trims 61 and more rims of 73 mm from cup sheet", () => {
    // 80 t, rims and sheet range: common practice, no source; shear strength and warm factor from memory
    const cut = { cutLengthMm: 70 * Math.PI * 73, thicknessMm: 1.2, shearStrengthMpa: 35, hotFactor: 0.75 };
    expect(tonnesForceKn(80)).toBeCloseTo(784.5, 1);
    expect(trimForceKn(cut)).toBeLessThan(tonnesForceKn(80));
    expect(trimForceKn({ ...cut, thicknessMm: 2.8 })).toBeGreaterThan(tonnesForceKn(80));
  });
});

describe("cavity layout", () => {
  it("CV-22 utilisation", () => {
    // derived: 54 rims of 80 mm on 930 × 520 mm; 1e-3
    const share = areaUtilisation({ cavities: 54, rimDiameterMm: 80, sheetWidthMm: 930, indexLengthMm: 520 });
    expect(Math.abs(share / 0.5613 - 1)).toBeLessThan(1e-3);
  });

  it("counts square and staggered rows", () => {
    // by hand: 10 mm rims without web; 100 × 100 holds 10 × 10, staggered 11 rows of 10 and 9
    const area = { lengthMm: 100, widthMm: 100, rimDiameterMm: 10, webMm: 0, edgeMm: 0 };
    expect(squareLayout(area)).toMatchObject({
      rows: 10,
      perOddRow: 10,
      cavities: 100,
      usedLengthMm: 100,
      usedWidthMm: 100,
    });
    expect(staggeredLayout(area)).toMatchObject({ rows: 11, perOddRow: 10, perEvenRow: 9, cavities: 105 });
    expect(fullestLayout(area).pattern).toBe("staggered");
    // equal rows: the shifted one reaches half a pitch further
    const shifted = staggeredLayout({ ...area, lengthMm: 19, widthMm: 105 });
    expect(shifted).toMatchObject({ rows: 2, perOddRow: 10, perEvenRow: 10, usedWidthMm: 105 });
    expect(shifted.usedLengthMm).toBeCloseTo(10 + 5 * Math.sqrt(3), 9);
  });

  it("gives no cavity where not one rim fits, and one where just one does", () => {
    const area = { lengthMm: 100, widthMm: 79, rimDiameterMm: 80, webMm: 8, edgeMm: 0 };
    expect(fullestLayout(area)).toMatchObject({ cavities: 0, rows: 0, usedLengthMm: 0 });
    expect(fullestLayout({ ...area, widthMm: 80 })).toMatchObject({
      pattern: "square",
      cavities: 1,
      usedWidthMm: 80,
    });
    expect(fullestLayout({ ...area, widthMm: 80, edgeMm: 1 }).cavities).toBe(0);
  });

  it("keeps every rim inside the area and below the densest packings known", () => {
    const size = fc.double({ min: 50, max: 1200, noNaN: true });
    fc.assert(
      fc.property(
        size,
        size,
        fc.double({ min: 20, max: 200, noNaN: true }),
        fc.double({ min: 0, max: 15, noNaN: true }),
        (lengthMm, widthMm, rimDiameterMm, webMm) => {
          const area = { lengthMm, widthMm, rimDiameterMm, webMm, edgeMm: 5 };
          for (const layout of [squareLayout(area), staggeredLayout(area)]) {
            expect(layout.usedLengthMm).toBeLessThanOrEqual(lengthMm + 1e-6);
            expect(layout.usedWidthMm).toBeLessThanOrEqual(widthMm + 1e-6);
            const pattern = layout.pattern === "square" ? Math.PI / 4 : Math.PI / (2 * Math.sqrt(3));
            // geometry: each rim owns one cell of the lattice on the area widened by one pitch
            const room = (lengthMm + rimDiameterMm + webMm) * (widthMm + rimDiameterMm + webMm);
            expect(
              (layout.cavities * Math.PI * rimDiameterMm * rimDiameterMm) / 4 / room,
            ).toBeLessThanOrEqual(pattern + 1e-9);
          }
          expect(fullestLayout(area).cavities).toBeGreaterThanOrEqual(squareLayout(area).cavities);
        },
      ),
      { numRuns: 500, seed: 20_260_329 },
    );
  });
});

describe("fit", () => {
  it("passes the worked example with every check in sight", () => {
    const fit = fitOf(WORKED_EXAMPLE);
    expect(fit.against).toEqual([]);
    expect(fit.fits).toBe(true);
    expect(fit.checks.map((check) => check.code)).toEqual([
      "mould-length",
      "mould-width",
      "depth",
      "index-in-oven",
      "mould-mass",
      "sheet-thickness-least",
      "sheet-thickness-most",
      "sheet-width-least",
      "sheet-width-most",
      "sheet-covers-mould",
      "trim-force",
      "forming-air-force",
      "forming-air-pressure",
      "polymer-on-line",
      "stacker-tooling",
      "approval",
      "product-mould",
      "product-insert",
      "product-sheet",
      "sheet-polymer",
    ]);
  });

  it.each([
    ["mould-length", { mould: { footprintLengthMm: 521 } }],
    ["mould-width", { mould: { footprintWidthMm: 881 }, sheet: { widthMm: 950 } }],
    ["depth", { mould: { depthMm: 151 } }],
    ["depth", { mould: { depthDirection: "up" } }],
    ["index-in-oven", { line: { oven: { heatedLengthMm: 500, maxNetFluxKwPerM2: 20 } } }],
    ["mould-mass", { mould: { massKg: 1501 } }],
    ["sheet-thickness-least", { line: { sheetThicknessMinMm: 1.1 } }],
    ["sheet-thickness-most", { line: { sheetThicknessMaxMm: 0.9 } }],
    ["sheet-width-least", { line: { sheetWidthMinMm: 940 } }],
    ["sheet-width-most", { line: { sheetWidthMaxMm: 920 } }],
    ["sheet-covers-mould", { sheet: { widthMm: 888 } }],
    ["trim-force", { line: { trimForceKn: 540 } }],
    ["forming-air-force", { line: { formingAirForceKn: 270 } }],
    ["forming-air-pressure", { line: { formingAirMaxBar: 5 } }],
    ["polymer-on-line", { line: { polymers: ["PS", "APET"] } }],
    ["stacker-tooling", { mould: { stackerTooling: "oval" } }],
    ["rim-rolling-unit", { product: { rimRolled: true }, line: { rimRollingMaxCyclesPerMin: null } }],
    ["rim-tooling", { product: { rimRolled: true }, line: { rimTooling: ["roll 95"] } }],
    ["rim-tooling", { product: { rimRolled: true }, mould: { rimTooling: null } }],
    ["approval", { mould: { approvedLineIds: [LineId.parse("another")] } }],
    ["product-mould", { product: { moulds: [{ mouldId: MouldId.parse("other"), insertId: null }] } }],
    [
      "product-insert",
      { product: { moulds: [{ mouldId: MouldId.parse("mould"), insertId: InsertId.parse("wavy") }] } },
    ],
    ["product-sheet", { product: { sheetId: SheetId.parse("other") } }],
    ["sheet-polymer", { sheet: { polymer: "PS" } }],
  ] as const)("says %s and nothing else when that alone is wrong", (code, change) => {
    const fit = fitOf(exampleWith(change as ExampleChange));
    expect(fit.fits).toBe(false);
    expect(fit.against.map((check) => check.code)).toEqual([code]);
  });

  it("carries the numbers and a sentence for people", () => {
    const [check] = fitOf(exampleWith({ line: { trimForceKn: 500 } })).against;
    expect(check).toMatchObject({ kind: "number", code: "trim-force", unit: "kN", has: 500, passed: false });
    expect(check?.kind === "number" ? check.needed : NaN).toBeCloseTo(542.87, 2);
    expect(check?.sentence).toBe("Trim force: 542.9 kN, the limit is 500 kN; 42.9 kN too much.");
    // a hair above the limit must not read as equal to it
    const [hair] = fitOf(exampleWith({ mould: { massKg: 1500.004 } })).against;
    expect(hair?.sentence).toBe(
      "Mould mass on the loading gear: 1500.004 kg, the limit is 1500 kg; 0.004 kg too much.",
    );
    const [thin] = fitOf(exampleWith({ line: { sheetThicknessMinMm: 1.2 } })).against;
    expect(thin?.sentence).toBe("Sheet thickness: 1 mm, the least is 1.2 mm; 0.2 mm too little.");
    const [tooling] = fitOf(exampleWith({ mould: { stackerTooling: "oval" } })).against;
    expect(tooling).toMatchObject({ kind: "name", needed: "oval", has: ["round 80", "round 95"] });
    expect(tooling?.sentence).toBe(
      "Example line does not take the stacker tooling oval; it takes round 80, round 95.",
    );
  });

  it("asks for rim rolling only where the rim is rolled", () => {
    const bare = { line: { rimRollingMaxCyclesPerMin: null, rimTooling: [] } };
    expect(against(exampleWith(bare))).toEqual([]);
    expect(against(exampleWith({ ...bare, product: { rimRolled: true } }))).toEqual([
      "rim-rolling-unit",
      "rim-tooling",
    ]);
    expect(against(exampleWith({ product: { rimRolled: true } }))).toEqual([]);
  });

  it("measures depth in the direction in which the mould forms", () => {
    expect(against(exampleWith({ mould: { depthDirection: "up", depthMm: 40 } }))).toEqual([]);
    expect(fitOf(exampleWith({ mould: { depthDirection: "up", depthMm: 41 } })).against[0]).toMatchObject({
      needed: 41,
      has: 40,
    });
  });

  it("lets a value at its limit pass, rounding included", () => {
    expect(against(exampleWith({ mould: { footprintLengthMm: 520 } }))).toEqual([]);
    expect(against(exampleWith({ sheet: { widthMm: 870 + 19 } }))).toEqual([]);
    expect(
      against(exampleWith({ line: { sheetThicknessMaxMm: 0.1 + 0.2 }, sheet: { thicknessMm: 0.3 } })),
    ).toEqual([]);
  });

  it("leaves spells out of service to the calendar", () => {
    const outOfService = [
      { copy: null, from: "2026-01-01T00:00", to: "2027-01-01T00:00", reason: "regrind" },
    ];
    expect(fitOf(exampleWith({ mould: { outOfService } })).fits).toBe(true);
  });

  it("accepts the insert choice that the mould has, if there are several", () => {
    const moulds = ["wavy", "ribbed"].map((insert) => ({
      mouldId: MouldId.parse("mould"),
      insertId: InsertId.parse(insert),
    }));
    expect(against(exampleWith({ product: { moulds } }))).toEqual([]);
  });

  it("takes sheet of 0.2 to 2.8 mm and 210 mm of depth on a line that states them, and nothing beyond", () => {
    // common practice, no source
    const line = {
      sheetThicknessMinMm: 0.2,
      sheetThicknessMaxMm: 2.8,
      maxDepthDownMm: 210,
      trimForceKn: 2000,
    };
    for (const thicknessMm of [0.2, 2.8])
      expect(against(exampleWith({ line, mould: { depthMm: 210 }, sheet: { thicknessMm } }))).toEqual([]);
    expect(against(exampleWith({ line, mould: { depthMm: 211 }, sheet: { thicknessMm: 0.19 } }))).toEqual([
      "depth",
      "sheet-thickness-least",
    ]);
  });
});
