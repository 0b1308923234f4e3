import type { Job } from "../problem/problem-data.ts";
import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import type { LotOnLine } from "./plan-look-ups.ts";
import { finding } from "./finding.ts";

/** An order of several lots may be split so: no more lots than allowed, none too small, packing units kept whole but in one lot. */
function splitFaults(job: Job, lots: readonly LotOnLine[]): Violation[] {
  const { orderId } = job;
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

/** Whether the lots bear the numbers from 0 on, each once. */
function areNumbered(lots: readonly LotOnLine[]): boolean {
  if (lots.length === 1) return lots[0]?.lot === 0;
  const numbers = new Set(lots.map((lot) => lot.lot));
  return numbers.size === lots.length && lots.every((lot) => lot.lot < lots.length);
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
  if (lots.length > 1) found.push(...splitFaults(job, lots));
  let pieces = 0;
  for (const lot of lots) pieces += lot.pieces;
  if (pieces !== job.pieces) {
    found.push(
      finding(
        "wrong-order-pieces",
        { orderId },
        `Order ${orderId} needs ${job.pieces} pieces; the plan makes ${pieces}.`,
      ),
    );
  }
  if (!areNumbered(lots)) {
    const numbers = lots.map((lot) => lot.lot).sort((a, b) => a - b);
    const text = `The ${lots.length} lots of order ${orderId} are numbered ${numbers.join(", ")} instead of 0 to ${lots.length - 1}.`;
    found.push(finding("wrong-lot-number", { orderId }, text));
  }
  return found;
}

/** Rule 9: every order is planned once, in full, or listed as unplanned with a reason. */
export function coverage(context: AuditContext): Violation[] {
  const { problem, plan, lotsOfOrder } = context;
  const timesUnplanned = new Map<string, number>();
  for (const { orderId } of plan.unplanned)
    timesUnplanned.set(orderId, (timesUnplanned.get(orderId) ?? 0) + 1);
  const found: Violation[] = [];
  for (const job of problem.jobs) {
    const lots = lotsOfOrder.get(job.orderId) ?? [];
    found.push(...jobFaults(job, lots, timesUnplanned.get(job.orderId) ?? 0));
  }
  for (const { orderId, reasons } of plan.unplanned) {
    if (reasons.length > 0) continue;
    const text = `Order ${orderId} is listed as unplanned without a reason.`;
    found.push(finding("unplanned-without-reason", { orderId }, text));
  }
  return found;
}
