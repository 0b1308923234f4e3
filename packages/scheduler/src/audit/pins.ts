import type { Pin } from "../problem/problem-data.ts";
import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import type { LotOnLine } from "./plan-look-ups.ts";
import { finding } from "./finding.ts";
import { sayDuration, sayInstant } from "./wording.ts";

function placeFaults(context: AuditContext, pin: Pin, lot: LotOnLine): Violation[] {
  const found: Violation[] = [];
  const subject = { lineId: lot.lineId, orderId: lot.orderId, at: lot.start };
  if (pin.lineId !== null && pin.lineId !== lot.lineId) {
    found.push(
      finding(
        "pin-line-broken",
        subject,
        `Order ${lot.orderId} is fixed to line ${pin.lineId} but runs on line ${lot.lineId}.`,
      ),
    );
  }
  if (pin.startAt !== null && lot.lot === 0 && pin.startAt !== lot.start) {
    const gap = lot.start - pin.startAt;
    const text = `Order ${lot.orderId} is fixed to start ${sayInstant(context.problem, pin.startAt)} but starts ${sayDuration(Math.abs(gap))} ${gap > 0 ? "later" : "earlier"}.`;
    found.push(finding("pin-start-broken", subject, text));
  }
  return found;
}

/** On each line the lots of orders with a sequence come first, in their sequence. */
function sequenceFaults(context: AuditContext, sequences: ReadonlyMap<string, number>): Violation[] {
  const found: Violation[] = [];
  if (sequences.size === 0) return found;
  const reached = new Map<string, number>();
  for (const lot of context.lots) {
    const sequence = sequences.get(lot.orderId) ?? Infinity;
    const before = reached.get(lot.lineId) ?? -Infinity;
    if (sequence < before) {
      const than = before === Infinity ? "a run without a place in the sequence" : `place ${before}`;
      const text = `Order ${lot.orderId} has place ${sequence} in the fixed sequence but runs on line ${lot.lineId} after ${than}.`;
      found.push(
        finding("pin-sequence-broken", { lineId: lot.lineId, orderId: lot.orderId, at: lot.start }, text),
      );
    }
    reached.set(lot.lineId, Math.max(before, sequence));
  }
  return found;
}

/** Rule 8: the planner's word is kept: line, exact start, sequence. */
export function pins(context: AuditContext): Violation[] {
  const placed = context.problem.pins.flatMap((pin) =>
    (context.lotsOfOrder.get(pin.orderId) ?? []).flatMap((lot) => placeFaults(context, pin, lot)),
  );
  const sequences = context.problem.pins.flatMap(({ orderId, sequence }): [string, number][] =>
    sequence === null ? [] : [[orderId, sequence]],
  );
  return [...placed, ...sequenceFaults(context, new Map(sequences))];
}
