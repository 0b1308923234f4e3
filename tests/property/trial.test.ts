import fc from "fast-check";
import { expect, it } from "vitest";
import { boardPlan } from "../../apps/web/src/kernels/board-plan.ts";
import { openTable } from "../../apps/web/src/trial/open-table.ts";
import { editDraw, editOf } from "../arbitraries/plan-edit.ts";
import { answerTo, asTried, groundOf, plannedPlant, type PlannedPlant } from "../fixtures/plan-by-hand.ts";

const plants = [1, 2, 3].map((seed) => plannedPlant({ lines: 2 + seed, orders: 12 + 6 * seed, seed }));

it("tells of every edit what the server then makes of it, refusals too", { timeout: 120_000 }, () => {
  const told = { plan: 0, refused: 0 };
  fc.assert(
    fc.property(
      fc.constantFrom(...plants),
      fc.array(editDraw, { minLength: 1, maxLength: 6 }),
      (plant, draws) => {
        let standing: PlannedPlant = plant;
        for (const draw of draws) {
          const edit = editOf(standing.document, draw);
          // An order that comes back has no name in the plan before; the board tries none.
          if (edit === null || edit.kind === "put back") continue;
          const board = boardPlan("standing", standing.document);
          const trial = openTable({ ...groundOf(standing), standing: board })?.tryOut(edit);
          const answer = answerTo(standing, edit);
          told[answer.kind] += 1;
          if (answer.kind === "refused") {
            expect(trial).toEqual(answer);
            continue;
          }
          if (trial?.kind !== "plan") throw new Error(`refused by the trial alone: ${JSON.stringify(edit)}`);
          expect(asTried(trial.plan.document)).toEqual(asTried(answer.document));
          // and the board lays the two out alike
          const places = (of: typeof board) =>
            of.segments.map(({ lineIndex, start, end, ending }) => ({ lineIndex, start, end, ending }));
          expect(places(trial.plan)).toEqual(places(boardPlan("answer", answer.document)));
          standing = { ...standing, document: answer.document };
        }
      },
    ),
    { numRuns: 60 },
  );
  expect(Math.min(told.plan, told.refused)).toBeGreaterThan(20);
});
