import { useEffect, type JSX } from "react";
import { StepButton } from "../../components/step-button.tsx";
import { useFormat } from "../../format/use-format.ts";
import { undoKey } from "../../interactions/keyboard.ts";
import { useText } from "../../text/text.ts";
import { stepWords } from "../../format/step-words.ts";
import { useBoard, useBoardStore } from "./use-board.ts";
import { usePlanEdits } from "./use-plan-edits.ts";

/** One step back or forth, by button or key. */
export function UndoButtons(): JSX.Element {
  const text = useText();
  const format = useFormat();
  const edits = usePlanEdits();
  const plan = useBoard((state) => state.plan);
  useUndoKeys();
  const words = (step: typeof edits.newest): string =>
    step === null || plan === null ? text.edit.earlierStep : stepWords(plan, step, { text, format });
  const nothing = edits.newest?.kind === "hold" ? text.holds.undoStops : text.edit.nothingToUndo;
  const undoTitle = edits.isProvisional
    ? text.look.noEdits
    : edits.canUndo
      ? text.edit.undoWhat(words(edits.next.undo))
      : nothing;
  const redoTitle = edits.isProvisional
    ? text.look.noEdits
    : edits.canRedo
      ? text.edit.redoWhat(words(edits.next.redo))
      : text.edit.nothingToRedo;
  return (
    <div className="tool-group" role="group" aria-label={text.edit.stepButtons}>
      <StepButton
        icon="undo"
        label={text.edit.undo}
        what={undoTitle}
        isDisabled={!edits.canUndo || !edits.isReady}
        onPress={() => edits.take("undo")}
      />
      <StepButton
        icon="redo"
        label={text.edit.redo}
        what={redoTitle}
        isDisabled={!edits.canRedo || !edits.isReady}
        onPress={() => edits.take("redo")}
      />
    </div>
  );
}

/** The newest step in words, whoever took it. */
export function NewestStep(): JSX.Element {
  const text = useText();
  const format = useFormat();
  const { newest, isBusy } = usePlanEdits();
  const plan = useBoard((state) => state.plan);
  const words = newest === null || plan === null ? "" : stepWords(plan, newest, { text, format });
  return (
    <span className="step-words" role="status">
      {isBusy ? text.edit.working : words}
    </span>
  );
}

/** Undo and redo by key wherever the focus is on the page, but for fields that have an undo of their own. */
function useUndoKeys(): void {
  const store = useBoardStore();
  const { take, canUndo, canRedo } = usePlanEdits();
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      const wanted = undoKey(event);
      const isTyping =
        event.target instanceof Element && event.target.matches("input, textarea, select, dialog, dialog *");
      if (wanted === null || isTyping) return;
      event.preventDefault();
      if (store.read().carry !== null) store.send({ kind: "given up" });
      else if (wanted === "undo" ? canUndo : canRedo) take(wanted);
    };
    window.addEventListener("keydown", onKeyDown);
    return () => window.removeEventListener("keydown", onKeyDown);
  }, [store, take, canUndo, canRedo]);
}
