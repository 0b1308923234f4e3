import { applyEdits, candidateEdits, rankRemedies } from "@formweek/scheduler";
import type { Plan, ProblemData, ProblemEdit, Remedy, SolveParams, TriedEdit } from "@formweek/scheduler";
import type { SolveRunner } from "../ports/solve-runner.ts";
import { approvalOffers } from "./approvals.ts";
import { shiftOfEdit, withHours } from "./remedy-shift.ts";
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

/** What came of the trials. */
export interface TriedRemedies {
  /** The plan under the inputs as they are, searched as long as each trial. */
  readonly base: Plan;
  readonly tried: number;
  /** Those that help, the best first. */
  readonly remedies: readonly Remedy[];
}

export interface RemedyWatch {
  /** Abort: the remedies found so far. */
  readonly signal: AbortSignal;
  /** Called before each trial and in it: how many are done, out of how many, and the share of the one under way. */
  readonly onTried: (done: number, all: number, share: number) => void;
}

/** A shift in a named closure, such as a breakdown or a service, is nobody's to give. */
export function isClosed({ closures }: Assembled, edit: ProblemEdit): boolean {
  if (edit.kind !== "extra shift") return false;
  const named = closures.get(edit.lineId) ?? [];
  return named.some(({ start, end }) => start < edit.to && edit.from < end);
}

/** What an edit makes of the problem; hours as the plant's records would hold them, so that they can be had with one click. */
function changedProblem(assembled: Assembled, edit: ProblemEdit): ProblemData | null {
  const hours = shiftOfEdit(assembled, edit);
  if (hours !== null) return withHours(assembled, hours).problem;
  const edited = applyEdits(assembled.problem, [edit]);
  return edited.ok ? edited.problem : null;
}

/**
 * What would help one late order: every edit that could shorten what holds it, lines that could be approved for it first, is
 * made and really planned from the plan on; those that help, ranked.
 */
export async function findRemedies(
  solver: SolveRunner,
  { assembled, plan, orderId, most, params }: RemedyAsk,
  { signal, onTried }: RemedyWatch,
): Promise<TriedRemedies> {
  const { problem } = assembled;
  const edits = [...approvalOffers(assembled, orderId), ...candidateEdits(problem, plan, orderId)]
    .filter((edit) => !isClosed(assembled, edit))
    .slice(0, most);
  const all = edits.length + 1;
  const planned = async (changed: ProblemData, done: number): Promise<Plan | null> => {
    onTried(done, all, 0);
    const result = await solver.solve({
      problem: changed,
      params: { ...params, members: 1, startFrom: plan },
      threads: 1,
      onProgress: (progress) => onTried(done, all, Math.min(1, progress.share)),
      signal,
    });
    return result.status === "planned" ? result.plan : null;
  };
  const base = (await planned(problem, 0)) ?? plan;
  const tried: TriedEdit[] = [];
  for (const [index, edit] of edits.entries()) {
    if (signal.aborted) break;
    const changed = changedProblem(assembled, edit);
    const found = changed === null ? null : await planned(changed, index + 1);
    if (changed !== null && found !== null) tried.push({ edit, problem: changed, plan: found });
  }
  return { base, tried: tried.length, remedies: rankRemedies(problem, base, orderId, tried) };
}
