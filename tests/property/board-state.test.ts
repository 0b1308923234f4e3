import type { PlanEdit } from "@formweek/contracts";
import fc from "fast-check";
import { expect, it } from "vitest";
import { boardPlan, type BoardPlan } from "../../apps/web/src/kernels/board-plan.ts";
import { emptyBoard, type BoardState } from "../../apps/web/src/state/board-state.ts";
import { editOf, shownPlan } from "../../apps/web/src/state/carry.ts";
import type { Intent } from "../../apps/web/src/state/intents.ts";
import { reduce } from "../../apps/web/src/state/reduce.ts";
import { openTable } from "../../apps/web/src/trial/open-table.ts";
import { answerTo, asTried, groundOf, plannedPlant, type PlannedPlant } from "../fixtures/plan-by-hand.ts";

const first = plannedPlant({ lines: 3, orders: 16, seed: 4 });

/** A board with the server behind it: what the board asks for is done, at once or when it is told to answer. */
class Desk {
  state: BoardState = emptyBoard;
  /** By plan id; the last is the one that stands on the server. */
  readonly plans: [string, PlannedPlant["document"]][] = [["plan 0", first.document]];
  #asked: PlanEdit | null = null;
  #tried: PlanEdit | null = null;

  send(intent: Intent): void {
    const { state, effects } = reduce(this.state, intent);
    this.state = state;
    for (const effect of effects) {
      if (effect.kind === "try edit") this.#tried = effect.edit;
      if (effect.kind === "ask for edit") this.#asked = effect.edit;
    }
  }

  /** The browser has worked out what was last to be tried. */
  tellTrial(): void {
    const edit = this.#tried;
    if (edit === null || this.state.plan === null) return;
    const trial = openTable({ ...groundOf(first), standing: this.state.plan })?.tryOut(edit);
    if (trial !== undefined) this.send({ kind: "tried", edit, trial });
  }

  /** The server answers what it was asked, and the plan that stands there arrives. */
  answer(): void {
    const edit = this.#asked;
    this.#asked = null;
    if (edit !== null) {
      const answer = answerTo({ ...first, document: this.#standing()[1] }, edit);
      if (answer.kind === "plan") this.plans.push([`plan ${this.plans.length}`, answer.document]);
      this.send({ kind: "edit answered", planId: answer.kind === "plan" ? this.#standing()[0] : null });
    }
    this.arrive(this.#standing());
  }

  /** An earlier plan stands again. */
  goBack(steps: number): void {
    const back = this.plans[Math.max(0, this.plans.length - 1 - steps)];
    if (back === undefined) return;
    this.plans.push([`plan ${this.plans.length}`, back[1]]);
    this.arrive(this.#standing());
  }

  arrive([id, document]: readonly [string, PlannedPlant["document"]]): void {
    this.send({ kind: "plan arrived", plan: boardPlan(id, document) });
  }

  #standing(): readonly [string, PlannedPlant["document"]] {
    const last = this.plans.at(-1);
    if (last === undefined) throw new Error("there is always a plan");
    return last;
  }
}

/** The plan that the state ought to show, worked out from the standing plan's document and nothing else. */
function fromScratch({ state, plans }: Desk): BoardPlan | null {
  const { plan, carry, pending } = state;
  if (plan === null) return null;
  const document = plans.find(([id]) => id === plan.planId)?.[1];
  if (document === undefined) throw new Error("the board stands on a plan of the server");
  const isForeseen = carry?.trial?.kind === "plan" || (pending !== null && pending.plan !== null);
  const edit = carry?.trial?.kind === "plan" ? editOf(plan, carry) : (pending?.edit ?? null);
  if (!isForeseen) return boardPlan(plan.planId, document);
  if (edit === null) throw new Error("something is foreseen of nothing");
  const answer = answerTo({ ...first, document }, edit);
  if (answer.kind === "refused") throw new Error(`shown though refused: ${answer.refusal.text}`);
  return boardPlan("from scratch", answer.document);
}

type Act = (desk: Desk) => void;
const send =
  (intent: Intent): Act =>
  (desk) =>
    desk.send(intent);

const step = fc.constantFrom("earlier", "later", "line above", "line below", "first on line", "last on line");

/** Takes a run up, carries it on with what that comes to told, and lets it go or not. */
const carried = fc.tuple(fc.nat(200), step, fc.boolean()).map(([draw, to, isLetGo]): Act => (desk) => {
  const index = draw % Math.max(1, desk.state.plan?.segments.length ?? 1);
  desk.send({ kind: "rows chosen", choice: "lines" });
  desk.send({ kind: "selected", selection: { kind: "segment", index } });
  desk.send({ kind: "selected taken up" });
  desk.send({ kind: "carried on", step: to });
  desk.tellTrial();
  if (isLetGo) desk.send({ kind: "let go" });
});

const act: fc.Arbitrary<Act> = fc.oneof(
  { weight: 8, arbitrary: carried },
  {
    weight: 3,
    arbitrary: fc.nat(200).map((index) => send({ kind: "taken up", index, point: { x: 300, y: 80 } })),
  },
  {
    weight: 5,
    arbitrary: fc
      .record({ x: fc.integer({ min: 0, max: 1200 }), y: fc.integer({ min: 0, max: 400 }) })
      .map((point) => send({ kind: "carried to", point })),
  },
  {
    weight: 4,
    arbitrary: fc
      .constantFrom("earlier", "later", "line above", "line below", "first on line", "last on line")
      .map((step) => send({ kind: "carried on", step })),
  },
  { weight: 5, arbitrary: fc.constant<Act>((desk) => desk.tellTrial()) },
  { weight: 3, arbitrary: fc.constant(send({ kind: "let go" })) },
  { weight: 3, arbitrary: fc.constant<Act>((desk) => desk.answer()) },
  {
    weight: 1,
    arbitrary: fc.nat(3).map(
      (steps): Act =>
        (desk) =>
          desk.goBack(steps),
    ),
  },
  fc.constantFrom<Act>(
    send({ kind: "given up" }),
    send({ kind: "selected taken up" }),
    send({ kind: "walked", step: "later" }),
    send({ kind: "rows chosen", choice: "moulds" }),
    send({ kind: "rows chosen", choice: "lines" }),
    send({ kind: "span chosen", spanSeconds: "whole plan" }),
    send({ kind: "panned", byX: 300, byY: 20 }),
    send({ kind: "zoomed", atX: 400, factor: 1.5 }),
    send({ kind: "filtered", by: { onlyLate: true } }),
    send({ kind: "filtered", by: { text: "a" } }),
  ),
);

it("shows after any acts the plan that is computed from scratch", { timeout: 180_000 }, () => {
  const seen = { standing: 0, foreseen: 0, plans: 0 };
  fc.assert(
    fc.property(fc.array(act, { minLength: 5, maxLength: 30 }), (acts) => {
      const desk = new Desk();
      desk.send({ kind: "board resized", size: { widthPx: 1200, heightPx: 400 } });
      desk.arrive(["plan 0", first.document]);
      for (const each of acts) {
        each(desk);
        const shown = shownPlan(desk.state);
        const computed = fromScratch(desk);
        if (shown === null || computed === null) throw new Error("a plan is shown");
        const isStanding = shown === desk.state.plan;
        seen[isStanding ? "standing" : "foreseen"] += 1;
        if (isStanding) expect(shown).toEqual(computed);
        else expect(asTried(shown.document)).toEqual(asTried(computed.document));
      }
      seen.plans += desk.plans.length - 1;
    }),
    { numRuns: 60 },
  );
  expect(seen.foreseen).toBeGreaterThan(50);
  expect(seen.plans).toBeGreaterThan(20);
});
