import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import { finding } from "./finding.ts";

/** Rule 6: an order runs only on a line and in a set-up that may make it. */
export function fit(context: AuditContext): Violation[] {
  const found: Violation[] = [];
  for (const lot of context.lots) {
    if (lot.option !== null) continue;
    const { refusals, options } = lot.job;
    const mouldId = context.setups.get(lot.setupId)?.mouldId;
    const refusal = refusals.find((entry) => entry.lineId === lot.lineId && entry.mouldId === mouldId);
    const why =
      refusal === undefined
        ? `is none of its ${options.length} possibilities`
        : `is refused: ${refusal.text}`;
    const text = `Order ${lot.orderId} runs on line ${lot.lineId} in set-up ${lot.setupId}, which ${why}.`;
    found.push(finding("does-not-fit", { ...lot, at: lot.start }, text));
  }
  return found;
}
