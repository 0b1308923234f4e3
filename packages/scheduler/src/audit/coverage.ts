import type { Job } from "../problem/problem-data.ts";
import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import { lotsByOrder, type LotOnLine } from "./plan-look-ups.ts";
import { finding } from "./finding.ts";

/** The order may be split so: no more lots than allowed, none too small, packing units kept whole but in one lot. */
function splitFaults(job: Job, lots: readonly LotOnLine[]): Violation[] {
  const { orderId } = job;
  if (lots.length <= 1) return [];
  if (job.lots === undefined || lots.length > job.lots.most) {
    const text = `Order ${orderId} is made in ${lots.length} lots; ${job.lots?.most ?? 1} may be made of it.`;
    return [finding("too-many-lots", { orderId }, text)];
  }
  const { leastPieces, unitPieces } = job.lots;
  const found: Violation[] = [];
  for (const lot of lots) {
    if (lot.pieces >= leastPieces) continue;
    const text = `Order ${orderId} lot ${lot.lot + 1} has ${lot.pieces} pieces; a lot of it needs ${leastPieces}.`;
    found.push(finding("lot-too-small", { ...lot, at: lot.start }, text));
  }
  const broken = lots.filter((lot) => lot.pieces % unitPieces > 0);
  if (broken.length > 1) {
    const sizes = broken.map((lot) => lot.pieces).join(" and ");
    const text = `Order ${orderId} has lots of ${sizes} pieces; only one may break its units of ${unitPieces}.`;
    found.push(finding("lot-breaks-unit", { orderId }, text));
  }
  return found;
}

function jobFaults(job: Job, lots: readonly LotOnLine[], timesUnplanned: number): Violation[] {
  const { orderId } = job;
  if (timesUnplanned + lots.length === 0) {
    const text = `Order ${orderId} (${job.pieces} pieces) is neither planned nor listed as unplanned.`;
    return [finding("order-forgotten", { orderId }, text)];
  }
  const found: Violation[] = [];
  if (timesUnplanned + Math.min(lots.length, 1) > 1) {
    const text = `Order ${orderId} is planned in ${lots.length} lots and listed ${timesUnplanned} times as unplanned.`;
    found.push(finding("order-answered-twice", { orderId }, text));
  }
  if (lots.length === 0) return found;
  found.push(...splitFaults(job, lots));
  const pieces = lots.reduce((sum, lot) => sum + lot.pieces, 0);
  if (pieces !== job.pieces) {
    found.push(
      finding(
        "wrong-order-pieces",
        { orderId },
        `Order ${orderId} needs ${job.pieces} pieces; the plan makes ${pieces}.`,
      ),
    );
  }
  const numbers = lots.map((lot) => lot.lot).sort((a, b) => a - b);
  if (numbers.some((number, index) => number !== index)) {
    const text = `The ${lots.length} lots of order ${orderId} are numbered ${numbers.join(", ")} instead of 0 to ${lots.length - 1}.`;
    found.push(finding("wrong-lot-number", { orderId }, text));
  }
  return found;
}

/** Rule 9: every order is planned once, in full, or listed as unplanned with a reason. */
export function coverage(context: AuditContext): Violation[] {
  const lotsOf = lotsByOrder(context);
  const timesUnplanned = new Map<string, number>();
  for (const { orderId } of context.plan.unplanned)
    timesUnplanned.set(orderId, (timesUnplanned.get(orderId) ?? 0) + 1);
  const unreasoned = context.plan.unplanned
    .filter((entry) => entry.reasons.length === 0)
    .map(({ orderId }) =>
      finding(
        "unplanned-without-reason",
        { orderId },
        `Order ${orderId} is listed as unplanned without a reason.`,
      ),
    );
  return [
    ...context.problem.jobs.flatMap((job) =>
      jobFaults(job, lotsOf.get(job.orderId) ?? [], timesUnplanned.get(job.orderId) ?? 0),
    ),
    ...unreasoned,
  ];
}
