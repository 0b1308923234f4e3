import type { ProblemFault } from "../result.ts";
import { duplicateFaults, fault, isAmount, isDuration } from "./fault.ts";
import type { Job, ProblemData } from "./problem-data.ts";

function optionFaults(
  data: ProblemData,
  job: Job,
  known: { lines: Set<string>; setups: Set<string> },
): ProblemFault[] {
  const faults: ProblemFault[] = [];
  for (const option of job.options) {
    if (!known.lines.has(option.lineId)) {
      faults.push(
        fault(
          "unknown-line",
          job.orderId,
          `Order ${job.orderId} may run on the unknown line ${option.lineId}.`,
          "Add the line or drop the option.",
        ),
      );
    }
    if (!known.setups.has(option.setupId)) {
      faults.push(
        fault(
          "unknown-setup",
          job.orderId,
          `Order ${job.orderId} needs the unknown set-up ${option.setupId}.`,
          "Add the set-up or drop the option.",
        ),
      );
    }
    if (!(Number.isFinite(option.secondsPerPiece) && option.secondsPerPiece > 0)) {
      faults.push(
        fault(
          "rate-not-positive",
          job.orderId,
          `Order ${job.orderId} has no rate above 0 on line ${option.lineId}.`,
          "Correct the rate.",
        ),
      );
    }
    if (!isCount(option.piecesPerCycle ?? 1)) {
      const text = `Order ${job.orderId} has ${option.piecesPerCycle} pieces per cycle on line ${option.lineId}.`;
      faults.push(fault("pieces-per-cycle", job.orderId, text, "Give a whole number from 1 on."));
    }
  }
  return faults;
}

function isCount(value: number): boolean {
  return Number.isSafeInteger(value) && value >= 1;
}

function splitFaults({ orderId, pieces, lots }: Job): ProblemFault[] {
  if (lots === undefined) return [];
  const { most, leastPieces, unitPieces } = lots;
  if (!isCount(most) || !isCount(leastPieces) || !isCount(unitPieces)) {
    const text = `Order ${orderId} may be split into ${most} lots of ${leastPieces} pieces or more in units of ${unitPieces}.`;
    return [fault("split-numbers", orderId, text, "Give whole numbers from 1 on.")];
  }
  if (leastPieces <= pieces) return [];
  const text = `Order ${orderId} has ${pieces} pieces, but its lots need ${leastPieces} each.`;
  return [fault("split-least-pieces", orderId, text, "Lower the least lot to the order's pieces.")];
}

/** A remedy may split an order that may not be split yet. */
function lotSizeFaults({ orderId, lotSize }: Job): ProblemFault[] {
  if (lotSize === undefined || (isCount(lotSize.leastPieces) && isCount(lotSize.unitPieces))) return [];
  const text = `Lots of order ${orderId} would have ${lotSize.leastPieces} pieces or more in units of ${lotSize.unitPieces}.`;
  return [fault("lot-size", orderId, text, "Give whole numbers from 1 on.")];
}

/** Faults of the orders to make. An order that may run nowhere is no fault: it is left unplanned with its reasons. */
export function jobFaults(data: ProblemData): ProblemFault[] {
  const faults = duplicateFaults(
    "order",
    data.jobs.map((job) => job.orderId),
  );
  const sheets = new Set(data.sheets.map((sheet) => sheet.id));
  const known = {
    lines: new Set(data.lines.map((line) => line.id)),
    setups: new Set(data.setups.map((setup) => setup.id)),
  };
  for (const job of data.jobs) {
    const id = job.orderId;
    if (!Number.isSafeInteger(job.pieces) || job.pieces < 1) {
      faults.push(
        fault("pieces", id, `Order ${id} asks for ${job.pieces} pieces.`, "Give a whole number from 1 on."),
      );
    }
    if (
      !Number.isSafeInteger(job.dueAt) ||
      !Number.isSafeInteger(job.earliestStartAt) ||
      !Number.isSafeInteger(job.latestStartAt ?? 0) ||
      !Number.isSafeInteger(job.published?.startAt ?? 0) ||
      job.published?.lineIds.length === 0 ||
      !isDuration(job.conditioningSeconds)
    ) {
      faults.push(
        fault(
          "order-times",
          id,
          `Order ${id} has a date or conditioning time that is not in whole seconds.`,
          "Correct its dates.",
        ),
      );
    }
    if (!isAmount(job.weight) || !isAmount(job.holdingWeight ?? 0) || !isAmount(job.sheetKgPerPiece)) {
      faults.push(
        fault(
          "order-numbers",
          id,
          `Order ${id} has a weight, holding weight or sheet use that is not a number from 0 on.`,
          "Correct the order.",
        ),
      );
    }
    if (job.sheetId !== null && !sheets.has(job.sheetId)) {
      faults.push(
        fault(
          "unknown-sheet",
          id,
          `Order ${id} needs the unknown sheet ${job.sheetId}.`,
          "Add the sheet or correct the product.",
        ),
      );
    }
    faults.push(...splitFaults(job), ...lotSizeFaults(job), ...optionFaults(data, job, known));
  }
  return faults;
}
