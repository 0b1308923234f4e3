import { useEffect, type JSX } from "react";
import type { OrderChange } from "@formweek/contracts";
import { StepButton } from "../../components/step-button.tsx";
import type { Format } from "../../format/format.ts";
import { useFormat } from "../../format/use-format.ts";
import { undoKey } from "../../interactions/keyboard.ts";
import { turnedRound } from "../../kernels/order-terms.ts";
import { stepSummary } from "../../kernels/step-summary.ts";
import { nextStep, type AskedStep } from "../../state/book-edits.ts";
import { useText, type Text } from "../../text/text.ts";
import { useBookWork } from "./use-book-edits.ts";

/** Takes steps on the order book back and does them again, by button or key, and says what was done last. */
export function BookSteps(): JSX.Element {
  const text = useText();
  const format = useFormat();
  const work = useBookWork();
  useBookKeys();
  const undo = nextStep(work, "undo");
  const redo = nextStep(work, "redo");
  const { book } = text;
  const words = (changes: readonly OrderChange[]): string => stepText(changes, text, format);
  return (
    <div className="book-steps">
      <span className="step-words" role="status">
        {work.isBusy
          ? book.saving
          : work.newest !== null && `${book.did[work.newest.as]}: ${words(stepMeant(work.newest))}`}
      </span>
      <div className="tool-group" role="group" aria-label={book.steps}>
        <StepButton
          icon="undo"
          label={book.undo}
          what={undo === null ? book.nothingToUndo : book.undoWhat(words(work.done.at(-1)?.changes ?? []))}
          isDisabled={undo === null || work.isBusy}
          onPress={() => work.take("undo")}
        />
        <StepButton
          icon="redo"
          label={book.redo}
          what={redo === null ? book.nothingToRedo : book.redoWhat(words(redo.changes))}
          isDisabled={redo === null || work.isBusy}
          onPress={() => work.take("redo")}
        />
      </div>
    </div>
  );
}

/** What was taken back is told as it was done, not as its opposite. */
function stepMeant({ as, changes }: AskedStep): readonly OrderChange[] {
  return as === "undo" ? turnedRound(changes) : changes;
}

function stepText(changes: readonly OrderChange[], { book }: Text, format: Format): string {
  const { kind, orderIds } = stepSummary(changes);
  const [only] = orderIds;
  return orderIds.length === 1 && only !== undefined
    ? book.stepOfOne[kind](only)
    : book.stepOfMany[kind](format.count(orderIds.length));
}

/** Undo and redo by key wherever the focus is on the page, but for fields that have an undo of their own. */
function useBookKeys(): void {
  const { take } = useBookWork();
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      const wanted = undoKey(event);
      const isTyping =
        event.target instanceof Element &&
        event.target.matches("input:not([type=checkbox]), textarea, select");
      if (wanted === null || isTyping) return;
      event.preventDefault();
      take(wanted);
    };
    window.addEventListener("keydown", onKeyDown);
    return () => window.removeEventListener("keydown", onKeyDown);
  }, [take]);
}
