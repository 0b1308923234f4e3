import type { PlannedLot } from "../plan/plan.ts";
import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import type { LotOnLine } from "./plan-look-ups.ts";
import { finding } from "./finding.ts";
import { sayValue } from "./wording.ts";

const fields = ["lineId", "setupId", "pieces", "start", "end", "finish"] as const;

/** What the segments say of a field of the summary. */
function wantedOf(lot: LotOnLine, field: (typeof fields)[number]): PlannedLot[typeof field] {
  return field === "finish" ? lot.end + lot.job.conditioningSeconds : lot[field];
}

function difference(given: PlannedLot, lot: LotOnLine): string | null {
  for (const field of fields) {
    const wanted = wantedOf(lot, field);
    if (given[field] !== wanted)
      return `says ${field} ${sayValue(given[field])}; the segments give ${sayValue(wanted)}`;
  }
  return null;
}

function isAfter(a: PlannedLot, b: PlannedLot): boolean {
  return a.orderId > b.orderId || (a.orderId === b.orderId && a.lot > b.lot);
}

function fault(lot: PlannedLot | LotOnLine, says: string): Violation {
  const text = `The summary of order ${lot.orderId} lot ${lot.lot + 1} ${says}.`;
  return finding("wrong-lot-summary", { lineId: lot.lineId, orderId: lot.orderId, at: lot.start }, text);
}

/** The lot that a summary is of, or null. */
function lotOf({ lotsOfOrder }: AuditContext, given: PlannedLot): LotOnLine | null {
  for (const lot of lotsOfOrder.get(given.orderId) ?? []) if (lot.lot === given.lot) return lot;
  return null;
}

/** The plan's list of lots says what its segments say, each lot once, in order. */
export function lotSummary(context: AuditContext): Violation[] {
  const seen = new Set<LotOnLine>();
  const found: Violation[] = [];
  let earlier: PlannedLot | null = null;
  for (const given of context.plan.lots) {
    const right = lotOf(context, given);
    if (right === null) found.push(fault(given, "has no run"));
    else if (seen.has(right)) found.push(fault(given, "is there twice"));
    else {
      const wrong = difference(given, right);
      if (wrong !== null) found.push(fault(given, wrong));
      if (earlier !== null && !isAfter(given, earlier)) found.push(fault(given, "is out of order"));
      seen.add(right);
    }
    earlier = given;
  }
  for (const lot of context.lots) if (!seen.has(lot)) found.push(fault(lot, "is missing"));
  return found;
}
