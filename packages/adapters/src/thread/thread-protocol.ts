import type { SolveProgressReport } from "@formweek/application";
import type { ProblemData, SolveParams, SolveResult } from "@formweek/scheduler";
import type { CancelFlag } from "./cancel-flag.ts";

/** What a solve thread is started with. */
export interface SolveThreadData {
  readonly problem: ProblemData;
  readonly params: SolveParams;
  readonly cancel: CancelFlag;
  readonly progressEveryMs: number;
}

/** What it says: progress now and then, the result once, then it ends. */
export type SolveThreadMessage =
  | { readonly kind: "progress"; readonly progress: SolveProgressReport }
  | { readonly kind: "result"; readonly result: SolveResult };
