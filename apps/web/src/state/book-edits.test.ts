import type { BookStep as KeptStep, OrderChange } from "@formweek/contracts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { madeOrder } from "../fixtures/made-order.ts";
import {
  nextStep,
  noEdits,
  reduceBook,
  type AskedStep,
  type BookEdits,
  type BookIntent,
} from "./book-edits.ts";

const step = (pieces: number): AskedStep => ({
  as: "change",
  changes: [{ before: madeOrder(), after: madeOrder({ pieces }) }],
  of: null,
});
let lastNumber = 0;
const yes = (): BookIntent => ({ kind: "accepted", number: ++lastNumber });
const ask = (edits: BookEdits, asked: AskedStep | null): BookEdits =>
  asked === null ? edits : reduceBook(edits, { kind: "asked", step: asked });
const accepted = (edits: BookEdits, asked: AskedStep | null): BookEdits =>
  reduceBook(ask(edits, asked), yes());
const refused = (edits: BookEdits, asked: AskedStep | null): BookEdits =>
  reduceBook(ask(edits, asked), { kind: "refused" });

describe("work on the order book", () => {
  it("is taken back and done again, step by step", () => {
    const done = accepted(accepted(noEdits, step(1)), step(2));
    const back = accepted(done, nextStep(done, "undo"));
    expect(back.newest?.changes).toEqual([{ before: madeOrder({ pieces: 2 }), after: madeOrder() }]);
    expect(nextStep(back, "redo")?.changes).toEqual(step(2).changes);
    const again = accepted(back, nextStep(back, "redo"));
    expect(again.done.map(({ changes }) => changes)).toEqual(done.done.map(({ changes }) => changes));
    expect(nextStep(again, "redo")).toBeNull();
  });

  it("sends the opposite of what was done, however often it goes back and forth", () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom("change", "undo", "redo")), (wishes) => {
        let book: OrderChange["after"] = madeOrder();
        let edits = noEdits;
        for (const [place, wish] of wishes.entries()) {
          const asked: AskedStep | null =
            wish === "change"
              ? { as: wish, changes: [{ before: book, after: madeOrder({ pieces: place + 2 }) }], of: null }
              : nextStep(edits, wish);
          if (asked === null) continue;
          expect(asked.changes[0]?.before).toEqual(book);
          book = asked.changes[0]?.after ?? null;
          edits = accepted(edits, asked);
        }
      }),
    );
  });

  it("forgets undone steps with a new change only", () => {
    const done = accepted(noEdits, step(1));
    const back = accepted(done, nextStep(done, "undo"));
    expect(refused(back, step(3)).undone).toHaveLength(1);
    expect(accepted(back, step(3)).undone).toEqual([]);
  });

  it("takes an import back like a step of its own", () => {
    const { changes } = step(5);
    const taken = reduceBook(noEdits, { kind: "taken over", changes, number: 5 });
    expect(nextStep(taken, "undo")?.changes).toEqual([
      { before: madeOrder({ pieces: 5 }), after: madeOrder() },
    ]);
  });

  it("sends one step at a time; a change that was made meanwhile follows on what became of the first", () => {
    const heavier = { before: madeOrder(), after: madeOrder({ weight: 9 }) };
    const waiting = ask(ask(noEdits, step(5)), { as: "change", changes: [heavier], of: null });
    expect(waiting.asked).toEqual(step(5));
    const next = reduceBook(waiting, yes());
    expect(next.asked).toEqual({
      as: "change",
      changes: [{ before: madeOrder({ pieces: 5 }), after: madeOrder({ pieces: 5, weight: 9 }) }],
      of: null,
    });
    expect(reduceBook(next, yes())).toMatchObject({ asked: null, waiting: [] });
    const held = reduceBook(waiting, { kind: "refused" });
    expect(held).toMatchObject({ asked: null, refused: step(5) });
    expect(reduceBook(held, { kind: "put away" }).asked?.changes).toEqual([heavier]);
  });

  it("lets a step back lapse while something is under way", () => {
    const asked = ask(accepted(noEdits, step(1)), step(2));
    expect(ask(asked, nextStep(asked, "undo"))).toBe(asked);
  });

  it("keeps a refused step until it is decided", () => {
    const done = accepted(noEdits, step(1));
    const no = refused(done, nextStep(done, "undo"));
    expect(no).toMatchObject({ asked: null, refused: { as: "undo" }, done: done.done });
    expect(reduceBook(no, { kind: "put away" })).toEqual({ ...done });
    const left = reduceBook(no, { kind: "left to others" });
    expect(left).toMatchObject({
      refused: null,
      asked: { as: "undo", changes: [], of: done.done[0]?.number },
    });
    expect(reduceBook(left, yes())).toMatchObject({ done: [], undone: [], newest: done.newest });
    const change = refused(done, step(2));
    expect(reduceBook(change, { kind: "left to others" })).toMatchObject({ refused: null, done: done.done });
  });

  it("stands after a reload where it stood before, whatever was done", () => {
    const wishes = fc.array(fc.constantFrom("change", "undo", "redo", "left"));
    fc.assert(
      fc.property(wishes, (all) => {
        const kept: KeptStep[] = [];
        let edits = noEdits;
        for (const [place, wish] of all.entries()) {
          const asked =
            wish === "change" ? step(place + 2) : nextStep(edits, wish === "redo" ? "redo" : "undo");
          if (asked === null) continue;
          const sent = wish === "left" ? { ...asked, changes: [] } : asked;
          edits = accepted(edits, sent);
          const { as: kind, of, changes } = sent;
          kept.push({ number: lastNumber, kind, of, changes: [...changes], at: "2026-12-01T06:00:00Z" });
        }
        const opened = reduceBook(noEdits, { kind: "opened", steps: kept });
        expect([opened.done, opened.undone]).toEqual([edits.done, edits.undone]);
        expect(reduceBook(edits, { kind: "opened", steps: kept })).toEqual(edits);
      }),
    );
  });

  it("counts a step once that is told with the desk's steps before its own answer", () => {
    const asked = ask(noEdits, step(7));
    const { changes } = step(7);
    const told: KeptStep = {
      number: 70,
      kind: "change",
      of: null,
      changes: [...changes],
      at: "2026-12-01T06:00:00Z",
    };
    const opened = reduceBook(asked, { kind: "opened", steps: [told] });
    expect(reduceBook(opened, { kind: "accepted", number: 70 }).done).toEqual([{ changes, number: 70 }]);
  });

  it("answers what comes unasked by staying as it is", () => {
    expect(reduceBook(noEdits, yes())).toBe(noEdits);
    for (const kind of ["refused", "left to others"] as const)
      expect(reduceBook(noEdits, { kind })).toBe(noEdits);
  });
});
