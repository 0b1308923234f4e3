import type { EditRefusal, FieldFault, ImportFault } from "@formweek/contracts";
import type { Naming } from "../naming.ts";

/** What the server says when it refuses something. */
export interface RefusalWords {
  readonly title: string;
  readonly cause: string;
  readonly remedy: string;
}

/** A failure as the server tells it. */
export interface SaidProblem extends RefusalWords {
  readonly code: string;
  readonly faults: readonly FieldFault[];
}

/** A refusal with the fields and rows concerned, each as it is read. */
export interface WordedProblem extends RefusalWords {
  readonly faults: readonly FieldFault[];
}

/** Refusals come in English and with a code: other languages word the code. */
export const refusalsText = {
  refusals: {
    problem: (said: SaidProblem, _naming: Naming): WordedProblem => said,
    edit: (refusal: EditRefusal, _naming: Naming): Omit<RefusalWords, "title"> => ({
      cause: refusal.text,
      remedy: refusal.remedy,
    }),
    importFault: (
      { problem, remedy }: ImportFault,
      _naming: Naming,
    ): Pick<ImportFault, "problem" | "remedy"> => ({
      problem,
      remedy,
    }),
    editTitle: (order: string) => `Order ${order} cannot be changed so.`,
  },
};
