import type { ProblemFault } from "../result.ts";
import { duplicateFaults, fault } from "./fault.ts";
import type { Pin, ProblemData } from "./problem-data.ts";

/** Pinned sequences of one line must name each place once and not contradict their own fixed starts. */
function sequenceFaults(lineId: string, pins: readonly Pin[]): ProblemFault[] {
  const faults: ProblemFault[] = [];
  const sorted = [...pins].sort(
    (a, b) => (a.sequence ?? 0) - (b.sequence ?? 0) || (a.orderId < b.orderId ? -1 : 1),
  );
  let latest: Pin | null = null;
  sorted.forEach((pin, i) => {
    const before = sorted[i - 1];
    if (before !== undefined && before.sequence === pin.sequence) {
      faults.push(
        fault(
          "pin-sequence-twice",
          pin.orderId,
          `Orders ${before.orderId} and ${pin.orderId} are both pinned as number ${pin.sequence ?? 0} of line ${lineId}.`,
          "Give each its own place.",
        ),
      );
    }
    if (pin.startAt === null) return;
    if (latest !== null && latest.startAt !== null && pin.startAt <= latest.startAt) {
      faults.push(
        fault(
          "pin-cycle",
          pin.orderId,
          `Order ${pin.orderId} is pinned after ${latest.orderId} on line ${lineId}, but to an earlier start.`,
          "Release one of the two pins.",
        ),
      );
    }
    latest = pin;
  });
  return faults;
}

/** Faults of the planner's pins: unknown or doubled orders, places without a line, sequences against their own starts. */
export function pinFaults(data: ProblemData): ProblemFault[] {
  const faults = duplicateFaults(
    "pin",
    data.pins.map((pin) => pin.orderId),
  );
  const orders = new Set(data.jobs.map((job) => job.orderId));
  const lines = new Set(data.lines.map((line) => line.id));
  const byLine = new Map<string, Pin[]>();
  for (const pin of data.pins) {
    const { orderId, lineId, startAt, sequence } = pin;
    if (!orders.has(orderId)) {
      faults.push(
        fault("pin-unknown-order", orderId, `A pin names the unknown order ${orderId}.`, "Remove the pin."),
      );
    }
    if (lineId !== null && !lines.has(lineId)) {
      faults.push(
        fault(
          "pin-unknown-line",
          orderId,
          `Order ${orderId} is pinned to the unknown line ${lineId}.`,
          "Correct the pin.",
        ),
      );
    }
    if (startAt !== null && !(Number.isSafeInteger(startAt) && startAt >= data.horizon.start)) {
      faults.push(
        fault(
          "pin-start-before-horizon",
          orderId,
          `Order ${orderId} is pinned to a start before the horizon.`,
          "Move the horizon or the pin.",
        ),
      );
    }
    if (sequence === null) continue;
    if (lineId === null || !Number.isInteger(sequence) || sequence < 0 || sequence > 1_000_000) {
      faults.push(
        fault(
          "pin-sequence",
          orderId,
          `Order ${orderId} is pinned to a place in a sequence without a line or with a place that is no whole number from 0 on.`,
          "Name the line and the place.",
        ),
      );
      continue;
    }
    byLine.set(lineId, [...(byLine.get(lineId) ?? []), pin]);
  }
  for (const [lineId, pins] of byLine) faults.push(...sequenceFaults(lineId, pins));
  return faults;
}
