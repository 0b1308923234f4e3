import { localTextAt } from "@formweek/capacity-model";
import { type ProblemEdit, candidateEdits } from "@formweek/scheduler";
import { isClosed } from "../planning/find-remedies.ts";
import { laterDue } from "../planning/later-due.ts";
import { finishesOf } from "../planning/plan-figures.ts";
import { shiftOfEdit } from "../planning/remedy-shift.ts";
import type { Assembled } from "../planning/assembled.ts";
import { easingEdits } from "./easing-edits.ts";
import type { ScenarioChange } from "./scenario-change.ts";
import { scenarioFaults } from "./scenario-faults.ts";
import type { ScenarioGround } from "./scenario-ground.ts";
import type { PlanOfInputs } from "./turned-orders.ts";

/** Late orders that are looked into: those that cost most. */
const MOST_LATE = 12;
/** Later due dates that are tried, of the late orders that weigh least. */
const MOST_LATER = 3;

interface LateOrder {
  readonly orderId: string;
  readonly weight: number;
  readonly lateSeconds: number;
}

/**
 * Single changes that could help the late orders of a plan, at most so many, the most promising first: hours and teams that they
 * wait for, second copies of moulds that hold them, and a later due date for those that weigh least. Where none is late, what could
 * make the plan cheaper. Pure.
 */
export function candidateChanges(
  { assembled, plan }: PlanOfInputs,
  ground: ScenarioGround,
  most: number,
): readonly ScenarioChange[] {
  const late = lateOrders({ assembled, plan });
  const worth = new Map<string, { readonly change: ScenarioChange; sum: number }>();
  for (const { orderId, weight, lateSeconds } of late.slice(0, MOST_LATE))
    for (const edit of candidateEdits(assembled.problem, plan, orderId))
      for (const change of changesOf(assembled, edit)) {
        const key = JSON.stringify(change);
        const known = worth.get(key) ?? { change, sum: 0 };
        known.sum += weight * lateSeconds;
        worth.set(key, known);
      }
  if (late.length === 0)
    for (const edit of easingEdits(assembled.problem, plan))
      for (const change of changesOf(assembled, edit)) worth.set(JSON.stringify(change), { change, sum: 0 });
  const isPossible = (change: ScenarioChange): boolean => scenarioFaults([change], ground).length === 0;
  const later = late
    .toSorted((a, b) => a.weight - b.weight || b.lateSeconds - a.lateSeconds)
    .flatMap(({ orderId }) => {
      const met = laterDue(assembled.problem, plan, orderId);
      return met?.edit.kind === "later due" ? [dueLater(orderId, met.edit.at)] : [];
    })
    .filter(isPossible)
    .slice(0, MOST_LATER);
  const others = [...worth.values()]
    .sort((a, b) => b.sum - a.sum)
    .map(({ change }) => change)
    .filter(isPossible);
  return [...others.slice(0, most - later.length), ...later];
}

const dueLater = (orderId: string, dueAt: number): ScenarioChange => ({
  kind: "change order",
  orderId,
  pieces: null,
  dueAt,
});

/** The dearest first. */
function lateOrders({ assembled: { problem }, plan }: PlanOfInputs): readonly LateOrder[] {
  const finishes = finishesOf(plan);
  return problem.jobs
    .map(({ orderId, weight, dueAt }) => ({
      orderId,
      weight,
      lateSeconds: (finishes.get(orderId) ?? dueAt) - dueAt,
    }))
    .filter(({ lateSeconds }) => lateSeconds > 0)
    .sort((a, b) => b.weight * b.lateSeconds - a.weight * a.lateSeconds);
}

/** An edit of the problem as changes of plant or orders; none where people have no such change to make. */
function changesOf(assembled: Assembled, edit: ProblemEdit): readonly ScenarioChange[] {
  if (isClosed(assembled, edit)) return [];
  if (edit.kind === "mould copy") return [{ kind: "more copies", mouldId: edit.mouldId, more: 1 }];
  const hours = shiftOfEdit(assembled, edit);
  const shift: readonly ScenarioChange[] = hours?.kind === "add shift" ? [hours] : [];
  if (edit.kind !== "extra team") return shift;
  const [like] = [...assembled.plant.setterTeams].sort((a, b) => b.setters - a.setters);
  if (like === undefined) return shift;
  const { from, to } = edit;
  const day = localTextAt(assembled.plant.timeZone, from).slice(0, 10);
  const name = `${like.name} +1, ${day}`.slice(-120);
  return [...shift, { kind: "another team", likeTeamId: like.id, name, from, to }];
}
