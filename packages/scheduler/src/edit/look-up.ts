import { positionOf, type Position, type StandingPlan } from "./standing-plan.ts";
import type { LotName } from "./plan-edit.ts";
import { found, refuse, type EditSubject, type Found } from "./refusal.ts";

/** The job of the order that is to be edited. */
export function findJob({ jobOf }: StandingPlan, subject: EditSubject): Found<number> {
  const job = jobOf.get(subject.orderId);
  if (job !== undefined) return found(job);
  return refuse(subject, "order-unknown", {
    text: `There is no order ${subject.orderId} to plan.`,
    remedy: "Choose an order of the plan, or add the order to the order book first.",
  });
}

/** A lot of the plan, and where it stands. */
export interface StandingLot extends Position {
  readonly job: number;
  readonly lot: number;
}

function lotNamed(standing: StandingPlan, { orderId, lot }: LotName): StandingLot | null {
  const { problem, jobOf, sequences } = standing;
  const job = jobOf.get(orderId);
  if (job === undefined || !Number.isInteger(lot) || lot < 0) return null;
  const index = problem.lots.firstLot[job]! + lot;
  if (index >= problem.lots.firstLot[job + 1]!) return null;
  const position = positionOf(problem, sequences, index);
  return position === null ? null : { ...position, job, lot: index };
}

/** The lot that is to be edited. */
export function findLot(standing: StandingPlan, subject: EditSubject): Found<StandingLot> {
  const job = findJob(standing, subject);
  if (!job.ok) return job;
  const { orderId } = subject;
  const lots = standing.plan.lots.filter((each) => each.orderId === orderId).length;
  if (lots === 0)
    return refuse(subject, "not-planned", {
      text: `Order ${orderId} is not in the plan.`,
      remedy: "Put the order back into the plan first.",
    });
  const lot = lotNamed(standing, { orderId, lot: subject.lot ?? 0 });
  if (lot !== null) return found(lot);
  return refuse(subject, "lot-unknown", {
    text: `Order ${orderId} has no lot ${(subject.lot ?? 0) + 1}; it is made in ${lots === 1 ? "one lot" : `${lots} lots`}.`,
    remedy: "Look at the plan again and choose one of the order's lots.",
  });
}

/** The position on the line just ahead of a lot of the standing plan; behind all where none is named. */
export function findPosition(
  standing: StandingPlan,
  subject: EditSubject,
  { line, before }: { readonly line: number; readonly before: LotName | null },
): Found<number> {
  if (before === null) return found(standing.sequences.length[line]!);
  const next = lotNamed(standing, before);
  if (next?.line === line) return found(next.position);
  return refuse(subject, "place-unknown", {
    text: `Order ${before.orderId} lot ${before.lot + 1}, before which it was to come, does not run on line ${subject.lineId ?? ""}.`,
    remedy: "Look at the plan again and choose a place on the line.",
    otherOrderId: before.orderId,
  });
}
