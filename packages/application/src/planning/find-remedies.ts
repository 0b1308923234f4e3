import { applyEdits, candidateEdits, rankRemedies } from "@formweek/scheduler";
import type { Plan, ProblemData, ProblemEdit, Remedy, SolveParams, TriedEdit } from "@formweek/scheduler";
import type { SolveRunner } from "../ports/solve-runner.ts";
import { approvalOffers } from "./approvals.ts";
import type { Assembled } from "./assembled.ts";

/** The order in question, its plan, and how much to try. */
export interface RemedyAsk {
  readonly assembled: Assembled;
  readonly plan: Plan;
  readonly orderId: string;
  /** At most so many edits are tried. */
  readonly most: number;
  /** Budget of each trial. */
  readonly params: SolveParams;
}

export interface RemedyWatch {
  /** Abort: the remedies found so far. */
  readonly signal: AbortSignal;
  /** Called before each trial: how many are done, out of how many. */
  readonly onTried: (done: number, all: number) => void;
}

/** A shift in a named closure, such as a breakdown or a service, is nobody's to give. */
function isClosed({ closures }: Assembled, edit: ProblemEdit): boolean {
  if (edit.kind !== "extra shift") return false;
  const named = closures.get(edit.lineId) ?? [];
  return named.some(({ start, end }) => start < edit.to && edit.from < end);
}

/**
 * What would help one late order: every edit that could shorten what holds it, lines that could be approved for it first, is
 * made and really planned from the plan on; those that help, ranked.
 */
export async function findRemedies(
  solver: SolveRunner,
  { assembled, plan, orderId, most, params }: RemedyAsk,
  { signal, onTried }: RemedyWatch,
): Promise<readonly Remedy[]> {
  const { problem } = assembled;
  const edits = [...approvalOffers(assembled, orderId), ...candidateEdits(problem, plan, orderId)]
    .filter((edit) => !isClosed(assembled, edit))
    .slice(0, most);
  const planned = async (changed: ProblemData): Promise<Plan | null> => {
    const result = await solver.solve({
      problem: changed,
      params: { ...params, members: 1, startFrom: plan },
      threads: 1,
      onProgress: () => undefined,
      signal,
    });
    return result.status === "planned" ? result.plan : null;
  };
  onTried(0, edits.length + 1);
  const base = (await planned(problem)) ?? plan;
  const tried: TriedEdit[] = [];
  for (const edit of edits) {
    if (signal.aborted) break;
    onTried(tried.length + 1, edits.length + 1);
    const edited = applyEdits(problem, [edit]);
    const changed = edited.ok ? await planned(edited.problem) : null;
    if (edited.ok && changed !== null) tried.push({ edit, problem: edited.problem, plan: changed });
  }
  return rankRemedies(problem, base, orderId, tried);
}
