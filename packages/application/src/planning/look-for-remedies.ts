import { candidateMoves, openEdits, type EditTable, type Plan, type ProblemEdit } from "@formweek/scheduler";
import type { SolveRunner } from "../ports/solve-runner.ts";
import type { Assembled } from "./assembled.ts";
import { findRemedies, type RemedyAsk, type RemedyWatch } from "./find-remedies.ts";
import { laterDue } from "./later-due.ts";
import { latenessOf, planFigures } from "./plan-figures.ts";
import { shiftOfEdit } from "./remedy-shift.ts";
import { type FoundRemedy, type RemedyFindings, sketchOf } from "./run-findings.ts";

/** Places of the late order that are timed; each takes some milliseconds. */
const MOST_MOVES = 36;
/** Moves that are shown: beside other remedies more would only be read over. */
const MOST_SHOWN_MOVES = 3;

type Looked = Pick<RemedyFindings, "before" | "orderLateSeconds" | "tried" | "remedies">;

/** Everything that may help one late order, tried on its plan: other places for it, searching on, and changes of plant or orders. */
export async function lookForRemedies(
  solver: SolveRunner,
  ask: RemedyAsk,
  watch: RemedyWatch,
): Promise<Looked> {
  const { problem } = ask.assembled;
  const opened = openEdits(problem, ask.plan);
  const moved = opened.ok ? await movesThatHelp(opened.value, ask, watch.signal) : { tried: 0, remedies: [] };
  const found = await findRemedies(solver, ask, watch);
  const onward = remedyOf({ kind: "plan on" }, { problem, plan: found.base, orderId: ask.orderId });
  const before = planFigures(problem, ask.plan);
  const changes = found.remedies.map(({ edit, plan, problem: changed }) =>
    remedyOf(actionOf(ask.assembled, edit), { problem: changed, plan, orderId: ask.orderId }),
  );
  const due = laterDue(problem, ask.plan, ask.orderId);
  const later =
    due === null ? [] : [remedyOf({ kind: "change", edit: due.edit }, { ...due, orderId: ask.orderId })];
  const orderLateSeconds = latenessOf(problem, ask.plan, ask.orderId);
  const helps = ({ after, orderLateSeconds: late }: FoundRemedy): boolean =>
    (late ?? Infinity) < (orderLateSeconds ?? Infinity) || after.cost < before.cost - LEAST_SAVING;
  const ofPlan = [...moved.remedies, onward].filter(helps).sort(byHelp);
  // that the customer takes it later is a way out whatever else there is
  const ofInputs = [...changes.filter((change) => isWorth(change, onward)), ...later]
    .filter(helps)
    .sort(byHelp);
  return {
    before,
    orderLateSeconds,
    tried: moved.tried + found.tried + 1 + later.length,
    remedies: [...ofPlan, ...ofInputs],
  };
}

/** Share of the plan's cost, and seconds sooner, below which a change of plant or order is not worth its trouble. */
const LEAST_GAIN = { costShare: 0.01, seconds: 900 };

/** A change is measured by what more searching alone would have found. */
function isWorth({ after, orderLateSeconds }: FoundRemedy, onward: FoundRemedy): boolean {
  const sooner = (onward.orderLateSeconds ?? Infinity) - (orderLateSeconds ?? Infinity);
  return (
    sooner >= LEAST_GAIN.seconds || after.cost <= onward.after.cost - LEAST_GAIN.costShare * onward.after.cost
  );
}

function actionOf(assembled: Assembled, edit: ProblemEdit): FoundRemedy["action"] {
  const hours = shiftOfEdit(assembled, edit);
  return hours === null ? { kind: "change", edit } : { kind: "hours", edit: hours };
}

/** Money below which two plans cost the same. */
const LEAST_SAVING = 1e-6;

/** The plan that costs least first, then the one in which the order is least late. */
function byHelp(a: FoundRemedy, b: FoundRemedy): number {
  const late = ({ orderLateSeconds }: FoundRemedy): number => orderLateSeconds ?? Number.MAX_SAFE_INTEGER;
  return a.after.cost - b.after.cost || late(a) - late(b);
}

interface Outcome {
  readonly problem: RemedyAsk["assembled"]["problem"];
  readonly plan: Plan;
  readonly orderId: string;
}

function remedyOf(action: FoundRemedy["action"], { problem, plan, orderId }: Outcome): FoundRemedy {
  return {
    action,
    after: planFigures(problem, plan),
    orderLateSeconds: latenessOf(problem, plan, orderId),
    // an edit by hand makes its plan anew
    sketch: action.kind === "edit" ? null : sketchOf(plan),
  };
}

async function movesThatHelp(
  table: EditTable,
  { assembled: { problem }, plan, orderId }: RemedyAsk,
  signal: AbortSignal,
): Promise<{ readonly tried: number; readonly remedies: readonly FoundRemedy[] }> {
  const found: FoundRemedy[] = [];
  const before = latenessOf(problem, plan, orderId) ?? Infinity;
  const moves = candidateMoves(problem, table.plan, orderId, MOST_MOVES);
  for (const edit of moves) {
    if (signal.aborted) break;
    // the process answers others between two timings
    await new Promise((resolve) => setImmediate(resolve));
    const result = table.apply(edit);
    if (!result.ok) continue;
    const remedy = remedyOf({ kind: "edit", edit }, { problem, plan: result.value, orderId });
    if ((remedy.orderLateSeconds ?? Infinity) < before) found.push(remedy);
  }
  return { tried: moves.length, remedies: found.sort(byHelp).slice(0, MOST_SHOWN_MOVES) };
}
