import type { PlannedLot } from "../plan/plan.ts";
import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import type { LotOnLine } from "./plan-look-ups.ts";
import { finding } from "./finding.ts";
import { sayValue } from "./wording.ts";

function keyOf(lot: { readonly orderId: string; readonly lot: number }): string {
  return `${lot.lot} ${lot.orderId}`;
}

function summaryOf(context: AuditContext, lot: LotOnLine): PlannedLot {
  const conditioning = context.jobs.get(lot.orderId)?.conditioningSeconds ?? 0;
  const { orderId, lineId, setupId, pieces, start, end } = lot;
  return { orderId, lot: lot.lot, lineId, setupId, pieces, start, end, finish: end + conditioning };
}

function difference(given: PlannedLot, wanted: PlannedLot): string | null {
  const fields = ["lineId", "setupId", "pieces", "start", "end", "finish"] as const;
  const field = fields.find((name) => given[name] !== wanted[name]);
  return field === undefined
    ? null
    : `says ${field} ${sayValue(given[field])}; the segments give ${sayValue(wanted[field])}`;
}

function isAfter(a: PlannedLot, b: PlannedLot): boolean {
  return a.orderId > b.orderId || (a.orderId === b.orderId && a.lot > b.lot);
}

/** The plan's list of lots says what its segments say, each lot once, in order. */
export function lotSummary(context: AuditContext): Violation[] {
  const wanted = new Map(context.lots.map((lot) => [keyOf(lot), summaryOf(context, lot)]));
  const seen = new Set<string>();
  const found: Violation[] = [];
  const report = (lot: PlannedLot, says: string) =>
    found.push(
      finding(
        "wrong-lot-summary",
        { ...lot, at: lot.start },
        `The summary of order ${lot.orderId} lot ${lot.lot + 1} ${says}.`,
      ),
    );
  context.plan.lots.forEach((given, index, all) => {
    const key = keyOf(given);
    const right = wanted.get(key);
    const earlier = all[index - 1];
    if (seen.has(key)) report(given, "is there twice");
    else if (right === undefined) report(given, "has no run");
    else {
      const wrong = difference(given, right);
      if (wrong !== null) report(given, wrong);
      if (earlier !== undefined && !isAfter(given, earlier)) report(given, "is out of order");
    }
    seen.add(key);
  });
  for (const [key, lot] of wanted) if (!seen.has(key)) report(lot, "is missing");
  return found;
}
