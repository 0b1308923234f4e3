import { removeAt, type Sequences } from "../timing/sequences.ts";
import { Turn } from "../timing/turns.ts";
import type { Draft } from "./draft.ts";
import { findLot } from "./look-up.ts";
import { found, type EditSubject, type Found } from "./refusal.ts";
import { lotsInUse, positionOf, trialOf, type StandingPlan } from "./standing-plan.ts";

/** Takes all lots of a job off their lines: it is whole again, and takes its turn as usual. */
function removeJob({ problem }: StandingPlan, sequences: Sequences, job: number): void {
  for (const lot of lotsInUse(problem, sequences, job)) {
    const at = positionOf(problem, sequences, lot);
    if (at !== null) removeAt(sequences, at.line, at.position);
    sequences.pieces[lot] = 0;
    sequences.turn[lot] = Turn.asItComes;
  }
  sequences.pieces[problem.lots.firstLot[job]!] = problem.jobs.pieces[job]!;
}

/** The order leaves the plan with all its lots. */
export function takeOut(standing: StandingPlan, orderId: string): Found<Draft> {
  const subject: EditSubject = { orderId, lot: null, lineId: null };
  const first = findLot(standing, subject);
  if (!first.ok) return first;
  const sequences = trialOf(standing);
  removeJob(standing, sequences, first.value.job);
  return found({ subject, sequences, placed: null, takenOut: new Set([...standing.takenOut, orderId]) });
}
