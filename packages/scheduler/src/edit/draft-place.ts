import { allowedPositions, type Sequences } from "../timing/sequences.ts";
import type { OptionPlace } from "./draft.ts";
import { found, refuse, sayLot, type EditSubject, type Found } from "./refusal.ts";
import type { StandingPlan } from "./standing-plan.ts";

/** One position on a line for each of the options, where pinned sequences let the lot stand there. */
export function placesAt(
  { problem }: StandingPlan,
  subject: EditSubject,
  {
    sequences,
    options,
    position,
  }: {
    /** Without the lot. */
    readonly sequences: Sequences;
    /** Of one lot on one line, at least one. */
    readonly options: readonly number[];
    readonly position: number;
  },
): Found<readonly OptionPlace[]> {
  const { jobs, data } = problem;
  const option = options[0]!;
  const { first, last } = allowedPositions(problem, sequences, option);
  if (position >= first && position <= last)
    return found(options.map((each): OptionPlace => ({ option: each, position })));
  if (jobs.rank[problem.options.job[option]!]! >= 0)
    return refuse(subject, "held-in-sequence", {
      text: `${sayLot(subject)} is held at its place in the sequence of its line.`,
      remedy: "Free the order before you move it.",
    });
  const row = sequences.at[problem.options.line[option]!]!;
  const otherOrderId = data.jobs[problem.options.job[row[first - 1]!]!]!.orderId;
  return refuse(subject, "held-in-sequence", {
    text: `Orders held in sequence come first on the line, the last of them order ${otherOrderId}.`,
    remedy: `Choose a place behind order ${otherOrderId}, or free it.`,
    otherOrderId,
  });
}
