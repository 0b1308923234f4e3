import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { intentOfKey } from "../interactions/keyboard.ts";
import { boardPlan } from "../kernels/board-plan.ts";
import { xOfInstant } from "../kernels/time-scale.ts";
import { orderServed } from "../kernels/plan-filter.ts";
import { rowTopPx } from "../kernels/row-layout.ts";
import { emptyBoard, type BoardState } from "./board-state.ts";
import { editOf, refusalOf, shownPlan } from "./carry.ts";
import type { Effect, Intent } from "./intents.ts";
import { layoutOf } from "./board-view.ts";
import { reduce } from "./reduce.ts";

const plan = boardPlan("standing", madePlan({ lines: 4, runsPerLine: 6, seed: 7 }));
const foreseen = boardPlan("foreseen", madePlan({ lines: 4, runsPerLine: 6, seed: 8 }));

interface Played {
  readonly state: BoardState;
  readonly effects: readonly Effect[];
}

function play(from: BoardState, ...intents: readonly Intent[]): Played {
  return intents.reduce<Played>(
    ({ state, effects }, intent) => {
      const next = reduce(state, intent);
      return { state: next.state, effects: [...effects, ...next.effects] };
    },
    { state: from, effects: [] },
  );
}

const open = play(
  emptyBoard,
  { kind: "board resized", size: { widthPx: 1200, heightPx: 600 } },
  { kind: "plan arrived", plan },
).state;

/** A point of the canvas over an instant of a line. */
function pointOver(state: BoardState, lineIndex: number, instant: number) {
  const layout = layoutOf(state);
  return {
    x: layout.labelWidthPx + xOfInstant(state.view, instant),
    y: rowTopPx(layout, state.view.scrollPx, lineIndex) + 20,
  };
}

const firstRun = plan.lines[0]?.segments[0];
if (firstRun?.source.kind !== "run") throw new Error("a line begins with a run");
const run = firstRun;
const { orderId, productId } = firstRun.source;
const taken = play(
  open,
  { kind: "selected", selection: { kind: "segment", index: run.index } },
  {
    kind: "selected taken up",
  },
).state;

describe("a plan that is a run's best so far", () => {
  const selected = play(open, { kind: "selected", selection: { kind: "segment", index: run.index } }).state;
  const looked = play(selected, { kind: "plan arrived", plan: foreseen, isProvisional: true }).state;

  it("keeps time, zoom and the selected lot", () => {
    expect(looked.view).toEqual(selected.view);
    const { selection } = looked;
    const source = selection?.kind === "segment" ? foreseen.segments[selection.index]?.source : undefined;
    expect(source?.kind === "run" && source.orderId).toBe(orderId);
  });

  it.each<Intent>([
    { kind: "taken up", index: run.index, point: { x: 300, y: 100 } },
    { kind: "selected taken up" },
  ])("is not changed by hand, which is told: $kind", (intent) => {
    const { state, effects } = play(looked, intent, { kind: "let go" });
    expect(state.carry).toBeNull();
    expect(effects).toEqual([{ kind: "tell not taken" }]);
  });

  it("gives way to the working plan, which is changed by hand again", () => {
    const back = play(looked, { kind: "plan arrived", plan }, { kind: "selected taken up" });
    expect(back.state.carry?.lot.orderId).toBe(orderId);
  });

  it("and the other one is asked for by a key", () => {
    const key = { key: "b", shiftKey: false, ctrlKey: false, altKey: false, metaKey: false };
    const intent = intentOfKey(key, 0, 100);
    if (intent === null) throw new Error("the key means nothing");
    expect(play(looked, intent).effects).toEqual([{ kind: "show other plan" }]);
  });
});

describe("a selected change", () => {
  const withChange = boardPlan("with a change", plan.document);
  const change = withChange.segments.find(
    (segment) => segment.source.kind === "change" && orderServed(withChange, segment) !== null,
  );

  it("stays selected in another plan that has a change for its order", () => {
    if (change === undefined) throw new Error("the made plan has no change");
    const before = play(open, {
      kind: "selected",
      selection: { kind: "segment", index: change.index },
    }).state;
    const { selection } = play(before, { kind: "plan arrived", plan: withChange }).state;
    expect(selection).toEqual({ kind: "segment", index: change.index });
  });
});

describe("carrying a lot by pointer", () => {
  const held = play(open, { kind: "taken up", index: run.index, point: pointOver(open, 0, run.start) }).state;

  it("asks to try the place under the pointer, once for each place", () => {
    const over = pointOver(open, 2, run.start + 3600);
    const { state, effects } = play(
      held,
      { kind: "carried to", point: over },
      { kind: "carried to", point: { ...over, y: over.y + 1 } },
    );
    expect(effects).toEqual([{ kind: "try edit", edit: editOf(plan, state.carry ?? never()) }]);
    expect(effects[0]).toMatchObject({ edit: { kind: "move", orderId, lot: 0, lineId: "L03" } });
  });

  it("holds it over another place when the board moves under the pointer", () => {
    const close = play(held, { kind: "span chosen", spanSeconds: 86_400 }).state;
    const over = play(close, { kind: "carried to", point: pointOver(close, 1, run.start) }).state;
    const panned = play(over, { kind: "panned", byX: 2000, byY: 0 }).state;
    expect(panned.carry?.place.at).toBeGreaterThan(over.carry?.place.at ?? Infinity);
    expect(panned.carry?.point).toEqual(over.carry?.point);
  });

  it("does nothing when it is let go where it lies, or given up", () => {
    for (const kind of ["let go", "given up"] as const) {
      const { state, effects } = play(held, { kind });
      expect([state.carry, state.pending, effects]).toEqual([null, null, []]);
    }
    const { state, effects } = play(
      held,
      { kind: "carried to", point: pointOver(open, 2, run.start) },
      { kind: "given up" },
    );
    expect([state.carry, state.pending]).toEqual([null, null]);
    expect(effects.filter(({ kind }) => kind === "ask for edit")).toEqual([]);
  });
});

describe("carrying a lot by keyboard", () => {
  it("asks for the move when let go, shows what was foreseen until the plan is here, then that plan", () => {
    const moved = play(taken, { kind: "carried on", step: "line below" });
    const [tried] = moved.effects;
    if (tried?.kind !== "try edit") throw new Error("the place is tried");
    const known = play(moved.state, {
      kind: "tried",
      edit: tried.edit,
      trial: { kind: "plan", plan: foreseen },
    }).state;
    expect(shownPlan(known)).toBe(foreseen);
    const asked = play(known, { kind: "let go" });
    expect(asked.effects).toEqual([{ kind: "ask for edit", edit: tried.edit }]);
    const answered = play(asked.state, { kind: "edit answered", planId: "new" }).state;
    expect(shownPlan(answered)).toBe(foreseen);
    const renewed = boardPlan("new", plan.document);
    const arrived = play(answered, { kind: "plan arrived", plan: renewed }).state;
    expect([shownPlan(arrived), arrived.pending]).toEqual([renewed, null]);
  });

  it("shows the standing plan again when the edit is refused", () => {
    const { state } = play(
      taken,
      { kind: "carried on", step: "later" },
      { kind: "let go" },
      { kind: "edit answered", planId: null },
    );
    expect([shownPlan(state), state.pending, state.carry]).toEqual([plan, null, null]);
  });

  it("drops an answer to a place that has been left", () => {
    const first = play(taken, { kind: "carried on", step: "line below" });
    const [tried] = first.effects;
    if (tried?.kind !== "try edit") throw new Error("the place is tried");
    const late = play(
      first.state,
      { kind: "carried on", step: "later" },
      { kind: "tried", edit: tried.edit, trial: { kind: "plan", plan: foreseen } },
    ).state;
    expect(late.carry?.trial).toBeNull();
  });

  it("names the reason of a line that the product does not fit, tries nothing there and asks for nothing", () => {
    const tooLong = { code: "mould-length", text: "Too long.", numbers: {}, compared: null };
    const knowing = play(taken, {
      kind: "fit arrived",
      refused: new Map([[productId, new Map([["L02", tooLong]])]]),
    }).state;
    const over = play(knowing, { kind: "carried on", step: "line below" });
    expect(refusalOf(over.state)).toBe(tooLong);
    expect(over.effects.filter(({ kind }) => kind === "try edit")).toEqual([]);
    expect(play(over.state, { kind: "let go" }).effects).toEqual([]);
  });

  it("may be let go where only what is frozen stands against it, so that the planner is asked", () => {
    const over = play(taken, { kind: "carried on", step: "later" });
    const [tried] = over.effects;
    if (tried?.kind !== "try edit") throw new Error("the place is tried");
    const heldRefusal = {
      code: "held-at-start",
      orderId: tried.edit.orderId,
      lot: 0,
      lineId: null,
      otherOrderId: null,
      text: "Held.",
      remedy: "Free it.",
    } as const;
    const refusedBy = (isFrozen: boolean) =>
      play(
        over.state,
        {
          kind: "tried",
          edit: tried.edit,
          trial: { kind: "refused", refusal: heldRefusal, isFrozen },
        },
        { kind: "let go" },
      );
    expect(refusedBy(false).effects).toEqual([]);
    const asked = refusedBy(true);
    expect(asked.effects).toEqual([{ kind: "ask for edit", edit: tried.edit }]);
    expect(shownPlan(asked.state)).toBe(plan);
  });

  it("is given up by a new plan, since it was taken from one that no longer stands", () => {
    const renewed = boardPlan("by somebody else", plan.document);
    const { state } = play(
      taken,
      { kind: "carried on", step: "later" },
      { kind: "plan arrived", plan: renewed },
    );
    expect(state.carry).toBeNull();
    expect(state.selection).toEqual({ kind: "segment", index: run.index });
  });

  it("takes nothing up while an edit is on its way, and no change", () => {
    const asked = play(taken, { kind: "carried on", step: "later" }, { kind: "let go" }).state;
    expect(play(asked, { kind: "selected taken up" }).state.carry).toBeNull();
    const change = plan.segments.find(({ source }) => source.kind === "change");
    const point = { x: 300, y: 100 };
    expect(play(open, { kind: "taken up", index: change?.index ?? -1, point }).state.carry).toBeNull();
  });
});

it("keeps a lot in one known place through any steps, and asks only for moves to other places", () => {
  const intent: fc.Arbitrary<Intent> = fc.oneof(
    fc
      .nat(plan.segments.length)
      .map((index): Intent => ({ kind: "taken up", index, point: { x: 400, y: 90 } })),
    fc.constant<Intent>({ kind: "selected taken up" }),
    fc
      .record({ x: fc.integer({ min: -50, max: 1300 }), y: fc.integer({ min: -50, max: 700 }) })
      .map((point): Intent => ({ kind: "carried to", point })),
    fc
      .constantFrom("earlier", "later", "line above", "line below", "first on line", "last on line")
      .map((step): Intent => ({ kind: "carried on", step })),
    fc.integer({ min: -900, max: 900 }).map((byX): Intent => ({ kind: "panned", byX, byY: 0 })),
    fc.constantFrom<Intent>(
      { kind: "let go" },
      { kind: "given up" },
      { kind: "edit answered", planId: null },
      { kind: "walked", step: "later" },
    ),
  );
  fc.assert(
    fc.property(fc.array(intent, { maxLength: 40 }), (intents) => {
      const { state, effects } = play(open, ...intents);
      if (state.carry !== null) expect(plan.lines[state.carry.place.lineIndex]).toBeDefined();
      for (const effect of effects) {
        if (!("edit" in effect) || effect.edit.kind !== "move") continue;
        const { before, orderId: moved, lot } = effect.edit;
        expect(before).not.toEqual({ orderId: moved, lot });
      }
    }),
    { numRuns: 200 },
  );
});

function never(): never {
  throw new Error("a lot is carried");
}
