import type { EditRefusal } from "@formweek/contracts";
import type { BoardPlan } from "./board-plan.ts";

/** What came of trying an edit: the plan as it would be, or why it may not be. */
export type Trial =
  | { readonly kind: "plan"; readonly plan: BoardPlan }
  | {
      readonly kind: "refused";
      readonly refusal: EditRefusal;
      /** What is frozen stands against it: it can still be asked for. */
      readonly isFrozen: boolean;
    };
