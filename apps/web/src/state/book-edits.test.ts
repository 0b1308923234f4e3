import type { OrderChange } from "@formweek/contracts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { madeOrder } from "../fixtures/made-order.ts";
import { nextStep, noEdits, reduceBook, type AskedStep, type BookEdits } from "./book-edits.ts";

const step = (pieces: number): AskedStep => ({
  as: "change",
  changes: [{ before: madeOrder(), after: madeOrder({ pieces }) }],
});
const ask = (edits: BookEdits, asked: AskedStep | null): BookEdits =>
  asked === null ? edits : reduceBook(edits, { kind: "asked", step: asked });
const accepted = (edits: BookEdits, asked: AskedStep | null): BookEdits =>
  reduceBook(ask(edits, asked), { kind: "accepted" });
const refused = (edits: BookEdits, asked: AskedStep | null): BookEdits =>
  reduceBook(ask(edits, asked), { kind: "refused" });

describe("work on the order book", () => {
  it("is taken back and done again, step by step", () => {
    const done = accepted(accepted(noEdits, step(1)), step(2));
    const back = accepted(done, nextStep(done, "undo"));
    expect(back.newest?.changes).toEqual([{ before: madeOrder({ pieces: 2 }), after: madeOrder() }]);
    expect(nextStep(back, "redo")?.changes).toEqual(step(2).changes);
    const again = accepted(back, nextStep(back, "redo"));
    expect(again.done).toEqual(done.done);
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
              ? { as: wish, changes: [{ before: book, after: madeOrder({ pieces: place + 2 }) }] }
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
    const taken = reduceBook(noEdits, { kind: "taken over", changes });
    expect(nextStep(taken, "undo")?.changes).toEqual([
      { before: madeOrder({ pieces: 5 }), after: madeOrder() },
    ]);
  });

  it("sends one step at a time; a change that was made meanwhile follows on what became of the first", () => {
    const heavier = { before: madeOrder(), after: madeOrder({ weight: 9 }) };
    const waiting = ask(ask(noEdits, step(5)), { as: "change", changes: [heavier] });
    expect(waiting.asked).toEqual(step(5));
    const next = reduceBook(waiting, { kind: "accepted" });
    expect(next.asked).toEqual({
      as: "change",
      changes: [{ before: madeOrder({ pieces: 5 }), after: madeOrder({ pieces: 5, weight: 9 }) }],
    });
    expect(reduceBook(next, { kind: "accepted" })).toMatchObject({ asked: null, waiting: [] });
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
    expect(reduceBook(no, { kind: "left to others" })).toMatchObject({ refused: null, done: [], undone: [] });
    const less: AskedStep = { as: "undo", changes: [] };
    expect(accepted(no, less)).toMatchObject({ refused: null, done: [], undone: [[]] });
  });

  it("answers what comes unasked by staying as it is", () => {
    for (const kind of ["accepted", "refused", "left to others"] as const)
      expect(reduceBook(noEdits, { kind })).toBe(noEdits);
  });
});
