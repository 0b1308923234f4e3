import type { PlanDocument, PlanEdit } from "@formweek/contracts";
import fc from "fast-check";

/** Draws that become an edit of any plan; where the plan has nothing for its kind, a move. */
export interface EditDraw {
  readonly kind: PlanEdit["kind"];
  readonly lot: number;
  readonly line: number;
  readonly place: number;
  readonly share: number;
}

export const editDraw: fc.Arbitrary<EditDraw> = fc.record({
  kind: fc.constantFrom("move", "move", "move", "take out", "put back", "split", "join"),
  lot: fc.nat(1000),
  line: fc.nat(1000),
  place: fc.nat(1000),
  share: fc.integer({ min: 1, max: 9 }),
});

const pick = <T>(list: readonly T[], draw: number): T | undefined => list[draw % Math.max(1, list.length)];

/** An edit of a plan, sound or not, of what the plan names; null of a plan without lots. */
export function editOf({ lots, lines, unplanned }: PlanDocument, draw: EditDraw): PlanEdit | null {
  const lot = pick(lots, draw.lot);
  const line = pick(lines, draw.line);
  if (lot === undefined || line === undefined) return null;
  const { orderId } = lot;
  const next = pick([...lots.filter((each) => each.lineId === line.id), null], draw.place) ?? null;
  const before = next === null ? null : { orderId: next.orderId, lot: next.lot };
  const move = { orderId, lot: lot.lot, lineId: line.id, before };
  const out = pick(unplanned, draw.place);
  const second = pick(
    lots.filter((each) => each.lot > 0),
    draw.place,
  );
  switch (draw.kind) {
    case "take out":
      return { kind: "take out", orderId };
    case "put back":
      return { kind: "put back", orderId: out?.orderId ?? orderId };
    case "split":
      return { kind: "split", ...move, pieces: Math.max(1, Math.round((lot.pieces * draw.share) / 10)) };
    case "join":
      return { kind: "join", orderId: second?.orderId ?? orderId };
    case "move":
      return { kind: "move", ...move };
  }
}
