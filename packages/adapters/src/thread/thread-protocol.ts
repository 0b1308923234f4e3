import type { SolveProgressReport } from "@formweek/application";
import type { Adoption, GroupTask, Plan, Round, SolveResult, Standing, Winner } from "@formweek/scheduler";
import type { CancelFlag } from "./cancel-flag.ts";

/** What a solve thread is started with. */
export interface SolveThreadData {
  readonly task: GroupTask;
  readonly cancel: CancelFlag;
  readonly progressEveryMs: number;
  /** Least time between two plans that are handed out on the way; null: none is. */
  readonly plansEveryMs: number | null;
}

/** What it is told, once it is ready: rounds, one at a time, or to make the winner's plan. */
export type SolveThreadOrder =
  | { readonly kind: "round"; readonly round: Round; readonly adoptions: readonly Adoption[] }
  | { readonly kind: "finish"; readonly winner: Winner };

/** What it answers to its start and to each order; and, within a round, progress and better plans now and then. */
export type SolveThreadMessage =
  | { readonly kind: "ready"; readonly elapsedMs: number }
  | { readonly kind: "standings"; readonly standings: readonly Standing[] }
  | { readonly kind: "result"; readonly result: SolveResult }
  | { readonly kind: "progress"; readonly progress: SolveProgressReport }
  | { readonly kind: "better plan"; readonly plan: Plan };
