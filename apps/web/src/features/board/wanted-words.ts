import { editWords } from "../../format/step-words.ts";
import { useFormat } from "../../format/use-format.ts";
import type { WantedStep } from "../../sync/working-plan.ts";
import { useText } from "../../text/text.ts";
import { useBoard } from "./use-board.ts";

/** A step that was wanted, in words. */
export function useWantedWords(step: WantedStep["step"]): string {
  const text = useText();
  const format = useFormat();
  const plan = useBoard((state) => state.plan);
  if (typeof step === "string") return text.edit[step];
  if (plan === null) return "";
  const edit =
    step.kind === "found plan"
      ? ({ kind: "choose", runId: step.runId, place: step.place, orderId: null } as const)
      : step;
  return editWords(plan, edit, { text, format });
}
