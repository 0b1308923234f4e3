import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InsertId } from "../plant/scalars.ts";
import type { Sheet } from "../plant/sheet.ts";
import { changeBetween, strippingChange } from "./change-between.ts";
import type { Changeover } from "./change-between.ts";
import {
  A,
  B,
  black,
  cold,
  driveSide,
  heavy,
  line,
  mould,
  onWhite,
  polymers,
  product,
  request,
  rolled,
  rules,
  sheet,
  white,
  withExtruder,
} from "./change-examples.ts";
import { EMPTY_LINE, setupIdentity, stateToMake, strippedState } from "./line-state.ts";
import type { LineState } from "./line-state.ts";
import type { ChangeRequest } from "./planned-task.ts";
import { mouldClassFor, rulesForLine } from "./rules-for-line.ts";

function change(from: LineState, to: LineState, more: Partial<ChangeRequest> = {}): Changeover {
  const result = changeBetween(request(from, to, more));
  if (result === null) throw new Error("these states do not differ");
  return result;
}

const minutes = (result: Changeover): readonly number[] =>
  [result.dismountSeconds, result.mountSeconds, result.tailSeconds].map((seconds) => seconds / 60);
const kinds = (result: Changeover): readonly string[] => result.tasks.map(({ kind }) => kind);

describe("a mould change", () => {
  it("takes the old mould out, mounts the new one, sets the trim and checks first pieces", () => {
    const result = change(onWhite(A), onWhite(B));
    expect(kinds(result)).toEqual(["mould out", "mould in", "trim set", "first-piece check"]);
    expect(minutes(result)).toEqual([10, 15 + 6, 5]);
    expect([result.teamSeconds, result.setterSeconds, result.machineSeconds].map((s) => s / 60)).toEqual([
      31, 31, 36,
    ]);
    expect(result.usesTrolley).toBe(true);
  });

  it("goes by the mass class of each mould and takes longer from the drive side", () => {
    expect(minutes(change(onWhite(A), onWhite(heavy), { setters: 2 }))).toEqual([10, 30 + 6, 5]);
    expect(minutes(change(onWhite(heavy), onWhite(A), { setters: 2 }))).toEqual([20, 15 + 6, 5]);
    expect(minutes(change(onWhite(A), onWhite(B), { line: driveSide }))).toEqual([15, 20 + 6, 5]);
    expect(mouldClassFor(rules, 300).name).toBe("light");
    expect(mouldClassFor(rules, 300.5).name).toBe("heavy");
  });

  it("shares stacker and rim tooling between two setters, one after the other with one", () => {
    const rim = mould("R", { massKg: 800, stackerTooling: "S2", rimTooling: "R1" });
    const to = stateToMake({ product: rolled, mould: rim, insertId: null, sheet: white });
    // Two: out 10, in 30, trim 6 beside rim 25 and stacker 18. One: all of them in a row.
    expect(minutes(change(onWhite(A), to, { setters: 2 }))).toEqual([10, 36, 5]);
    expect(minutes(change(onWhite(A), to, { setters: 1 }))).toEqual([10, 30 + 6 + 25 + 18, 5]);
    expect(change(onWhite(A), to, { setters: 2 }).setterSeconds / 60).toBe(10 + 30 + 6 + 25 + 18);
  });

  it("adds the heat-up of a mould that was not preheated beside the line, without the team", () => {
    const result = change(onWhite(A), onWhite(cold));
    // Heat-up 35 starts with the mould in at 25; the trim is set meanwhile.
    expect(minutes(result)).toEqual([10, 21, 35 - 6 + 5]);
    expect(result.tasks.find(({ kind }) => kind === "mould heat-up")?.byTeam).toBe(false);
  });

  it("needs no trolley where the line has none", () => {
    expect(change(onWhite(A), onWhite(B), { line: { ...line, trolleyId: null } }).usesTrolley).toBe(false);
  });

  it("mounts on an empty line without a dismount, threading sheet and heating the oven", () => {
    const result = change(EMPTY_LINE, onWhite(A), { setters: 1 });
    expect(result.dismountSeconds).toBe(0);
    expect(new Set(kinds(result))).toEqual(
      new Set([
        "mould in",
        "trim set",
        "stacker tooling",
        "packing format",
        "splice",
        "sheet width",
        "oven re-soak",
        "first-piece check",
      ]),
    );
  });
});

describe("an insert change", () => {
  const one = mould("F1", { family: "F", inserts: ["i1", "i2"] });
  const two = mould("F2", { family: "F" });
  const withInsert = (id: string): LineState =>
    stateToMake({ product, mould: one, insertId: InsertId.parse(id), sheet: white });

  it("stays on the base within one mould, without the trolley", () => {
    const result = change(withInsert("i1"), withInsert("i2"));
    expect(kinds(result)).toEqual(["insert in", "trim set", "first-piece check"]);
    expect(minutes(result)).toEqual([0, 16 + 6, 5]);
    expect(result.usesTrolley).toBe(false);
  });

  it("between moulds of one family first frees the old one's insert set", () => {
    const result = change(onWhite(one), onWhite(two));
    expect(minutes(result)).toEqual([8, 8 + 6, 5]);
    expect(result.usesTrolley).toBe(false);
  });
});

describe("a sheet change", () => {
  const on = (which: Sheet, forProduct = product): LineState =>
    stateToMake({ product: forProduct, mould: A, insertId: null, sheet: which });

  it("takes longer from dark to light, and binds no team", () => {
    expect(minutes(change(on(white), on(black)))).toEqual([0, 0, 2 + 10 + 5]);
    expect(minutes(change(on(black), on(white)))).toEqual([0, 0, 2 + 30 + 5]);
  });

  it("takes longer through an in-line extruder", () => {
    expect(minutes(change(on(black), on(white), { line: withExtruder }))).toEqual([0, 0, 2 + 3 * 30 + 5]);
  });

  it("sets rails and clearances by the team while the colour runs clear", () => {
    const wide = sheet("wide", { widthMm: 900, thicknessMm: 1.2 }, 90);
    const result = change(on(white), on(wide), { setters: 1 });
    expect(minutes(result)).toEqual([0, 11, 12 - 11 + 5]);
  });

  it("lets the oven settle in proportion to the difference of forming temperatures, up to the ceiling", () => {
    const styrene = sheet("styrene", { polymer: "PS" }, 10);
    // 18 K at 8 min per 10 K are 14.4 min; splice 2 and polymer 20 are longer.
    const result = change(on(white), on(styrene));
    expect(minutes(result)).toEqual([0, 0, 2 + 20 + 5]);
    expect(result.tasks.find(({ kind }) => kind === "oven re-soak")?.minutes).toBeCloseTo(14.4, 9);
    const slow = change(on(white), on(styrene), { rules: { ...rules, ovenSoakMinutesPer10K: 30 } });
    expect(minutes(slow)).toEqual([0, 0, 40 + 5]);
  });

  it("throws away fewer cycles than a mould change; cycles weigh advance × width × thickness × density", () => {
    // 0.52 m × 0.93 m × 1 mm of PP at 905 kg/m³ weigh 0.43766 kg, as derived for check value CV-05's thinner sheet.
    expect(change(on(white), on(black)).scrapKg).toBeCloseTo(40 * 0.437658, 4);
    expect(change(onWhite(B), onWhite(A)).scrapKg).toBeCloseTo(100 * 0.437658, 4);
  });

  it("of the packing format alone asks for no first-piece check and no scrap", () => {
    const result = change(on(white), on(white, { ...product, piecesPerStack: 40 }));
    expect([kinds(result), minutes(result), result.scrapKg]).toEqual([["packing format"], [0, 9, 0], 0]);
  });
});

describe("no change", () => {
  it("lies between equal states, whatever product or copy", () => {
    expect(changeBetween(request(onWhite(A), onWhite(A)))).toBeNull();
    expect(setupIdentity(onWhite(A))).toBe(
      setupIdentity(
        stateToMake({ product: { ...product, netMassG: 7 }, mould: A, insertId: null, sheet: white }),
      ),
    );
    expect(setupIdentity(onWhite(A))).not.toBe(setupIdentity(onWhite(B)));
  });
});

describe("stripping a line", () => {
  it("is dismounting alone", () => {
    const { from: state, ...rest } = request(onWhite(heavy), EMPTY_LINE);
    const result = strippingChange({ from: state, line: rest.line, rules, polymers, setters: 2 });
    expect(
      result === null ? null : [kinds(result), minutes(result), result.scrapKg, result.usesTrolley],
    ).toEqual([["mould out"], [20, 0, 0], 0, true]);
    expect(strippingChange({ from: strippedState(state), line, rules, polymers, setters: 2 })).toBeNull();
    expect(strippedState(strippedState(state))).toEqual(strippedState(state));
  });

  it("leaves sheet and stacker tooling on the line", () => {
    const back = change(strippedState(onWhite(A)), onWhite(A));
    expect(kinds(back)).toEqual(["mould in", "trim set", "first-piece check"]);
  });
});

describe("rules for a line", () => {
  it("prefers the set that names it", () => {
    const own = { ...rules, lineIds: [line.id], firstPieceCheckMinutes: 1 };
    expect(rulesForLine([rules, own], line.id)).toBe(own);
    expect(rulesForLine([rules], line.id)).toBe(rules);
    expect(rulesForLine([], line.id)).toBeNull();
  });
});

describe("the longest path", () => {
  const moulds = [
    A,
    B,
    heavy,
    cold,
    mould("R", { rimTooling: "R1" }),
    mould("F1", { family: "F" }),
    mould("F2", { family: "F" }),
  ];
  const sheets = [
    white,
    black,
    sheet("thin", { thicknessMm: 0.6, widthMm: 800 }, 40),
    sheet("styrene", { polymer: "PS" }),
  ];
  const state = fc.oneof(
    fc.constant(EMPTY_LINE),
    fc
      .record({
        mould: fc.constantFrom(...moulds),
        sheet: fc.constantFrom(...sheets),
        product: fc.constantFrom(product, rolled, { ...product, piecesPerStack: 30 }),
      })
      .map((making) => stateToMake({ ...making, insertId: null })),
  );

  it("lies between the longest task and the sum, and more setters never lengthen the critical work", () => {
    fc.assert(
      fc.property(state, state, fc.integer({ min: 1, max: 4 }), (from, to, setters) => {
        const result = changeBetween(request(from, to, { setters }));
        if (result === null) {
          expect(setupIdentity(from)).toBe(setupIdentity(to));
          return;
        }
        const seconds = result.tasks.map((task) => task.endSeconds - task.startSeconds);
        const sum = seconds.reduce((total, value) => total + value, 0);
        expect(result.machineSeconds).toBeLessThanOrEqual(sum);
        expect(result.machineSeconds).toBeGreaterThanOrEqual(Math.max(0, ...seconds));
        expect(result.dismountSeconds + result.mountSeconds + result.tailSeconds).toBe(result.machineSeconds);
        expect(
          Math.min(result.dismountSeconds, result.mountSeconds, result.tailSeconds),
        ).toBeGreaterThanOrEqual(0);
        expect(result.setterSeconds).toBeLessThanOrEqual(result.teamSeconds * setters);
        if (setters === 1) expect(result.setterSeconds).toBe(result.teamSeconds);
        if (from.mould !== null && to.mould !== null && from.mould.id !== to.mould.id) {
          expect(result.dismountSeconds).toBeGreaterThan(0);
        }
      }),
      { numRuns: 400 },
    );
  });
});
