import type { Format } from "../../format/format.ts";
import { stepWords } from "../../format/step-words.ts";
import { secondsOf, type BoardPlan } from "../../kernels/board-plan.ts";
import type { PlanChoice } from "../../kernels/plan-choices.ts";
import type { Text } from "../../text/text.ts";

/** A plan to choose, in words; lines and lots are named as the plan on the board has them. */
export function choiceWords(
  choice: PlanChoice,
  board: BoardPlan,
  { text, format }: { readonly text: Text; readonly format: Format },
): string {
  const { versions } = text;
  switch (choice.kind) {
    case "working":
      return choice.isPublished ? versions.workingIsPublished : versions.workingPlan;
    case "published": {
      const { at, note } = choice.publication;
      const time = format.instant(secondsOf(at));
      const words = choice.isNewest ? versions.publishedPlan(time) : versions.publishedEarlier(time);
      return note === "" ? words : versions.stepOf(words, note);
    }
    case "step": {
      const time = format.instant(secondsOf(choice.step.at));
      return versions.stepOf(time, stepWords(board, choice.step, { text, format }));
    }
  }
}
