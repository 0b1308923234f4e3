import type { Job } from "../problem/problem-data.ts";
import type { Work } from "../work/work.ts";
import { ANY_TIME, type Insertion, type InsertionRoom } from "./insertion.ts";
import { oneLot } from "./one-lot.ts";
import { inTwoLots } from "./two-lots.ts";

interface Part {
  readonly pieces: number;
  readonly end: number;
}

export type NoFirstPart = "too-small" | "nothing-by-then" | "no-room-for-the-rest";

/** An order in two lots, its part in time and the rest, each of so many pieces that end then (s); or whole in one lot. The insertion is to be given back. */
export type FirstPart =
  | { readonly kind: "whole"; readonly insertion: Insertion }
  | { readonly kind: "parts"; readonly insertion: Insertion; readonly first: Part; readonly rest: Part }
  | { readonly kind: "none"; readonly reason: NoFirstPart };

/** As many pieces as can end by an instant (s), then the rest at its earliest, on any lines, while every other order is in time. */
export function* firstPart(room: InsertionRoom, order: Job, by: number): Work<FirstPart> {
  const whole = oneLot(room, order);
  if (whole.kind === "placed") {
    if (whole.end <= by) return { kind: "whole", insertion: whole.insertion };
    room.giveBack(whole.insertion);
  }
  const two = inTwoLots(order);
  if (two === null) return { kind: "none", reason: "too-small" };
  yield;
  const insertion = room.lend(two.order);
  const none = (reason: NoFirstPart): FirstPart => {
    room.giveBack(insertion);
    return { kind: "none", reason };
  };
  const first = insertion.most(insertion.optionsOf(0), by, two.steps);
  if (first === null) return none("nothing-by-then");
  yield;
  insertion.share(first.pieces);
  insertion.putIn(first.place, by);
  const rest = insertion.earliest(insertion.optionsOf(1), ANY_TIME);
  if (rest === null) return none("no-room-for-the-rest");
  insertion.putIn(rest.place, rest.end);
  return {
    kind: "parts",
    insertion,
    first: { pieces: first.pieces, end: insertion.endOf(first.place) },
    rest: { pieces: order.pieces - first.pieces, end: insertion.endOf(rest.place) },
  };
}
