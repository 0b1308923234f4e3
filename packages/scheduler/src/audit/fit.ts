import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import { finding } from "./finding.ts";

/** Rule 6: an order runs only on a line and in a set-up that may make it. */
export function fit(context: AuditContext): Violation[] {
  return context.lots.flatMap((lot) => {
    if (context.optionOf(lot.orderId, lot.lineId, lot.setupId) !== null) return [];
    const job = context.jobs.get(lot.orderId);
    const mouldId = context.setups.get(lot.setupId)?.mouldId;
    const refusal = job?.refusals.find((entry) => entry.lineId === lot.lineId && entry.mouldId === mouldId);
    const why =
      refusal === undefined
        ? `is none of its ${job?.options.length ?? 0} possibilities`
        : `is refused: ${refusal.text}`;
    const text = `Order ${lot.orderId} runs on line ${lot.lineId} in set-up ${lot.setupId}, which ${why}.`;
    return [finding("does-not-fit", { ...lot, at: lot.start }, text)];
  });
}
