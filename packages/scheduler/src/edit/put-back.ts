import { allowedPositions } from "../timing/sequences.ts";
import type { Draft, OptionPlace } from "./draft.ts";
import { findJob } from "./look-up.ts";
import { found, refuse, type EditSubject, type Found } from "./refusal.ts";
import { trialOf, type StandingPlan } from "./standing-plan.ts";

/** The order may stand, in one lot, wherever a line may make it. */
export function putBack(standing: StandingPlan, orderId: string): Found<Draft> {
  const { problem, plan } = standing;
  const subject: EditSubject = { orderId, lot: null, lineId: null };
  const job = findJob(standing, subject);
  if (!job.ok) return job;
  if (plan.lots.some((lot) => lot.orderId === orderId))
    return refuse(subject, "planned-already", {
      text: `Order ${orderId} is in the plan already.`,
      remedy: "Move it where it is to run.",
    });
  const lot = problem.lots.firstLot[job.value]!;
  const { firstOption } = problem.lots;
  const sequences = trialOf(standing);
  const places: OptionPlace[] = [];
  for (let option = firstOption[lot]!; option < firstOption[lot + 1]!; option++) {
    const { first, last } = allowedPositions(problem, sequences, option);
    for (let position = first; position <= last; position++) places.push({ option, position });
  }
  if (places.length === 0) return nowhere(standing, subject);
  const takenOut = new Set([...standing.takenOut].filter((id) => id !== orderId));
  return found({ subject, sequences, placed: { lot, places }, takenOut });
}

/** No line may make the order: what the plan says of it. */
function nowhere({ plan }: StandingPlan, subject: EditSubject): Found<never> {
  const reasons = plan.unplanned.find(({ orderId }) => orderId === subject.orderId)?.reasons ?? [];
  const others = reasons.filter(({ code }) => code !== "taken-out");
  const texts = new Set(others.map(({ text }) => text));
  return refuse(subject, "does-not-fit", {
    text: [`No line may make order ${subject.orderId}.`, ...texts].join(" "),
    remedy: "Look at the product's moulds and lines, and at what holds the order.",
    reasons: others,
  });
}
