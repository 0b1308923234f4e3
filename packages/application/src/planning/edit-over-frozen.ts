import {
  type EditRefusal,
  type Pin,
  type Plan,
  type ProblemData,
  type ProblemFault,
  openEdits,
} from "@formweek/scheduler";
import { keptBy, withPins } from "./frozen-pins.ts";
import type { PlanEdit } from "./plan-edit.ts";

/** What an edit comes to, and what of the frozen it moves for that. */
export interface EditOutcome {
  /** The problem that the plan was timed under: what stays frozen is pinned in it. */
  readonly problem: ProblemData;
  readonly plan: Plan;
  /** The edit leaves everything where it is. */
  readonly isIdle: boolean;
  /** Frozen orders that are touched or moved; empty where the edit leaves them alone. */
  readonly moved: readonly Pin[];
}

export type EditTried =
  | { readonly kind: "done"; readonly outcome: EditOutcome }
  | { readonly kind: "refused"; readonly refusal: EditRefusal }
  | { readonly kind: "faulty"; readonly faults: readonly ProblemFault[] };

interface FrozenEdit {
  readonly edit: PlanEdit;
  /** What is frozen, as far as the plan keeps it. */
  readonly frozen: readonly Pin[];
}

/**
 * Tries an edit so that as little as possible of what is frozen moves: nothing or the edited order alone; else whatever
 * must. A refusal is that of the last try, in which only the rules of the plant stand against the edit. Pure.
 */
export function editOverFrozen(problem: ProblemData, plan: Plan, asked: FrozenEdit): EditTried {
  const others = asked.frozen.filter(({ orderId }) => orderId !== asked.edit.orderId);
  const calm = tried(withPins(problem, others), plan, asked);
  return calm.kind === "refused" && others.length > 0 ? tried(problem, plan, asked) : calm;
}

function tried(problem: ProblemData, plan: Plan, { edit, frozen }: FrozenEdit): EditTried {
  const opened = openEdits(problem, plan);
  if (!opened.ok) return { kind: "faulty", faults: opened.error };
  const edited = opened.value.apply(edit);
  if (!edited.ok) return { kind: "refused", refusal: edited.error };
  const isIdle = edited.value === opened.value.plan;
  const stay = new Set(keptBy(edited.value, frozen).map(({ orderId }) => orderId));
  const moved = frozen.filter(({ orderId }) => !stay.has(orderId) || (orderId === edit.orderId && !isIdle));
  return { kind: "done", outcome: { problem, plan: edited.value, isIdle, moved } };
}
