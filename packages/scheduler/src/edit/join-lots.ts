import { removeAt } from "../timing/sequences.ts";
import { Turn } from "../timing/turns.ts";
import type { Draft } from "./draft.ts";
import { findLot } from "./look-up.ts";
import { found, refuse, type EditSubject, type Found } from "./refusal.ts";
import { lotsInUse, positionOf, trialOf, type StandingPlan } from "./standing-plan.ts";

/** The pieces of all lots go to the order's first one, where that stands. */
export function joinLots(standing: StandingPlan, orderId: string): Found<Draft> {
  const { problem } = standing;
  const subject: EditSubject = { orderId, lot: null, lineId: null };
  const first = findLot(standing, subject);
  if (!first.ok) return first;
  const sequences = trialOf(standing);
  const others = lotsInUse(problem, sequences, first.value.job).slice(1);
  if (others.length === 0)
    return refuse(subject, "not-split", {
      text: `Order ${orderId} is made in one lot.`,
      remedy: "There is nothing to join.",
    });
  for (const lot of others) {
    const at = positionOf(problem, sequences, lot)!;
    removeAt(sequences, at.line, at.position);
    sequences.pieces[first.value.lot]! += sequences.pieces[lot]!;
    sequences.pieces[lot] = 0;
    sequences.turn[lot] = Turn.asItComes;
  }
  return found({ subject, sequences, placed: null, takenOut: standing.takenOut });
}
