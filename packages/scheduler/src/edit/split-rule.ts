import { found, refuse, sayLot, type EditSubject, type Found } from "./refusal.ts";
import { lotsInUse, type StandingPlan } from "./standing-plan.ts";

/** Pieces that are to leave a lot. */
interface Split {
  readonly job: number;
  readonly lot: number;
  readonly pieces: number;
}

/** The lot that may take the pieces: the order may be made in one lot more, and both parts may be lots. */
export function checkSplit(
  standing: StandingPlan,
  subject: EditSubject,
  { job, lot, pieces }: Split,
): Found<number> {
  const { problem, sequences } = standing;
  const { lots, data } = problem;
  const { orderId, lots: rule } = data.jobs[job]!;
  if (rule === undefined)
    return refuse(subject, "may-not-be-split", {
      text: `Order ${orderId} is to be made in one lot.`,
      remedy: "Move it as a whole, or allow its product to be split.",
    });
  const used = lotsInUse(problem, sequences, job);
  const made = lots.firstLot[job]! + used.length;
  if (made >= lots.firstLot[job + 1]!)
    return refuse(subject, "too-many-lots", {
      text: `Order ${orderId} is made in ${used.length === 1 ? "one lot" : `${used.length} lots`}, and no more may be made of it.`,
      remedy: "Join its lots first, or move it as it is.",
    });
  const rest = sequences.pieces[lot]! - pieces;
  if (!Number.isInteger(pieces) || pieces < rule.leastPieces || rest < rule.leastPieces)
    return refuse(subject, "too-few-pieces", {
      text: `${sayLot(subject)} has ${sequences.pieces[lot]!} pieces; with ${pieces} taken from it ${rest} would stay, and a lot needs ${rule.leastPieces}.`,
      remedy: `Choose a whole number of pieces that leaves both lots with ${rule.leastPieces} or more.`,
      leastPieces: rule.leastPieces,
    });
  const broken = [
    ...used.filter((each) => each !== lot).map((each) => sequences.pieces[each]!),
    pieces,
    rest,
  ];
  if (broken.filter((each) => each % rule.unitPieces > 0).length > 1)
    return refuse(subject, "breaks-packing", {
      text: `${pieces} and ${rest} pieces would break the packing units of ${rule.unitPieces} in more than one lot of order ${orderId}.`,
      remedy: `Choose a multiple of ${rule.unitPieces} pieces.`,
      unitPieces: rule.unitPieces,
    });
  return found(made);
}
