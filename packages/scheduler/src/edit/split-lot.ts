import { placesAt } from "./draft-place.ts";
import type { Draft } from "./draft.ts";
import { findLine, optionsOnLine } from "./line-options.ts";
import { findLot, findPosition } from "./look-up.ts";
import type { PlanEdit } from "./plan-edit.ts";
import { found, type EditSubject, type Found } from "./refusal.ts";
import { checkSplit } from "./split-rule.ts";
import { trialOf, type StandingPlan } from "./standing-plan.ts";

/** Pieces of the lot become a lot of their own, which may stand at the place named; the rest stays where it is. */
export function splitLot(
  standing: StandingPlan,
  edit: Extract<PlanEdit, { readonly kind: "split" }>,
): Found<Draft> {
  const subject: EditSubject = { orderId: edit.orderId, lot: edit.lot, lineId: edit.lineId };
  const source = findLot(standing, subject);
  if (!source.ok) return source;
  const { job, lot, line: from, position: at } = source.value;
  const line = findLine(standing, subject);
  if (!line.ok) return line;
  const split = checkSplit(standing, subject, { job, lot, pieces: edit.pieces });
  if (!split.ok) return split;
  const { options } = standing.problem;
  const setup = options.setup[standing.sequences.at[from]![at]!]!;
  const made = split.value;
  const there = optionsOnLine(standing, subject, { job, lot: made, line: line.value, setup });
  if (!there.ok) return there;
  const position = findPosition(standing, subject, { line: line.value, before: edit.before });
  if (!position.ok) return position;
  const sequences = trialOf(standing);
  sequences.pieces[lot]! -= edit.pieces;
  sequences.pieces[made] = edit.pieces;
  const ask = { sequences, options: there.value, position: position.value };
  const places = placesAt(standing, subject, ask);
  if (!places.ok) return places;
  const { takenOut } = standing;
  return found({ subject, sequences, placed: { lot: made, places: places.value }, takenOut });
}
