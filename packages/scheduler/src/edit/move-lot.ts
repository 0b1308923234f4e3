import { removeAt } from "../timing/sequences.ts";
import { placesAt } from "./draft-place.ts";
import type { Draft } from "./draft.ts";
import { findLine, optionsOnLine } from "./line-options.ts";
import { findLot, findPosition } from "./look-up.ts";
import type { PlanEdit } from "./plan-edit.ts";
import { found, type EditSubject, type Found } from "./refusal.ts";
import { trialOf, type StandingPlan } from "./standing-plan.ts";

/** The lot leaves its place and may stand at the one named. */
export function moveLot(
  standing: StandingPlan,
  edit: Extract<PlanEdit, { readonly kind: "move" }>,
): Found<Draft> {
  const subject: EditSubject = { orderId: edit.orderId, lot: edit.lot, lineId: edit.lineId };
  const moved = findLot(standing, subject);
  if (!moved.ok) return moved;
  const { job, lot, line: from, position: old } = moved.value;
  const line = findLine(standing, subject);
  if (!line.ok) return line;
  const { options } = standing.problem;
  const setup = options.setup[standing.sequences.at[from]![old]!]!;
  const there = optionsOnLine(standing, subject, {
    job,
    lot,
    line: line.value,
    setup,
    mouldId: edit.mouldId ?? null,
  });
  if (!there.ok) return there;
  const place = findPosition(standing, subject, { line: line.value, before: edit.before });
  if (!place.ok) return place;
  const sequences = trialOf(standing);
  removeAt(sequences, from, old);
  // what stood behind it on its own line has moved up by one
  const position = line.value === from && place.value > old ? place.value - 1 : place.value;
  const places = placesAt(standing, subject, { sequences, options: there.value, position });
  if (!places.ok) return places;
  const { takenOut } = standing;
  return found({ subject, sequences, placed: { lot, places: places.value }, takenOut });
}
