import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import { finding } from "./finding.ts";
import type { LineStep } from "./line-history.ts";
import { optionOfRun, type LotOnLine } from "./plan-look-ups.ts";
import { sayDuration, sayInstant } from "./wording.ts";

type RunStep = LineStep & { readonly kind: "run" };

function startFaults({ problem, lots }: AuditContext): Violation[] {
  const found: Violation[] = [];
  for (const lot of lots) {
    const { earliestStartAt, latestStartAt = Infinity } = lot.job;
    if (lot.start < earliestStartAt) {
      const text = `Order ${lot.orderId} starts on line ${lot.lineId} ${sayInstant(problem, lot.start)}, ${sayDuration(earliestStartAt - lot.start)} before its earliest start.`;
      found.push(finding("starts-too-early", { ...lot, at: lot.start }, text));
    }
    if (lot.start > latestStartAt) {
      const text = `Order ${lot.orderId} starts on line ${lot.lineId} ${sayInstant(problem, lot.start)}, ${sayDuration(lot.start - latestStartAt)} after its latest start.`;
      found.push(finding("starts-too-late", { ...lot, at: lot.start }, text));
    }
  }
  return found;
}

/** Instant before which neither a run nor the change that serves it may start; -Infinity for none. */
function setUpFrom(context: AuditContext, { segment, servedBy }: RunStep): number {
  const opens = optionOfRun(context, segment)?.availableFromAt ?? -Infinity;
  if (!context.problem.changeAwaitsEarliestStart || servedBy === null) return opens;
  return Math.max(opens, context.jobs.get(segment.orderId)?.earliestStartAt ?? -Infinity);
}

/**
 * Where an option opens only at an instant, neither the run nor the change that serves it starts before; where changes
 * await the order's earliest start, no change that serves it does.
 */
function setUpsTooEarly(context: AuditContext): Violation[] {
  const found: Violation[] = [];
  for (const [lineId, steps] of context.stepsOfLine) {
    for (const step of steps) {
      if (step.kind !== "run") continue;
      const from = setUpFrom(context, step);
      const start = step.servedBy?.start ?? step.heldFrom;
      if (start >= from) continue;
      const { orderId } = step.segment;
      const text = `Line ${lineId} is set up for order ${orderId} ${sayInstant(context.problem, start)}, ${sayDuration(from - start)} before that is possible.`;
      found.push(finding("set-up-too-early", { lineId, orderId, at: start }, text));
    }
  }
  return found;
}

/** Kilograms of sums of many lots carry rounding: a milligram and a part in 10^9 are let pass. */
function isShort(neededKg: number, suppliedKg: number): boolean {
  return neededKg > suppliedKg + 1e-6 + suppliedKg * 1e-9;
}

/** Lots of each sheet, in order of start. */
function lotsBySheet({ lots }: AuditContext): Map<string, LotOnLine[]> {
  const lotsOf = new Map<string, LotOnLine[]>();
  for (const lot of lots) {
    const { sheetId } = lot.job;
    if (sheetId === null) continue;
    const known = lotsOf.get(sheetId);
    if (known === undefined) lotsOf.set(sheetId, [lot]);
    else known.push(lot);
  }
  return lotsOf;
}

/** A sheet's supply covers, at the start of each lot, all lots that have started by then. One finding a lot. */
function sheetShortages(context: AuditContext): Violation[] {
  const found: Violation[] = [];
  const lotsOf = lotsBySheet(context);
  for (const sheet of context.problem.sheets) {
    const lots = lotsOf.get(sheet.id);
    if (sheet.stockKg === null || lots === undefined) continue;
    const arrivals = [...sheet.arrivals].sort((a, b) => a.at - b.at);
    let suppliedKg = sheet.stockKg;
    let arrived = 0;
    let neededKg = 0;
    lots.forEach((lot, index) => {
      for (; arrived < arrivals.length && (arrivals[arrived]?.at ?? Infinity) <= lot.start; arrived += 1) {
        suppliedKg += arrivals[arrived]?.kg ?? 0;
      }
      neededKg += lot.pieces * lot.job.sheetKgPerPiece;
      // Lots that start together draw together: judged at the last of them.
      if (lots[index + 1]?.start === lot.start || !isShort(neededKg, suppliedKg)) return;
      const text = `When order ${lot.orderId} starts ${sayInstant(context.problem, lot.start)}, ${neededKg.toFixed(1)} kg of sheet ${sheet.id} have been taken and ${suppliedKg.toFixed(1)} kg are there.`;
      found.push(finding("sheet-short", { ...lot, at: lot.start }, text));
    });
  }
  return found;
}

/** Rule 5: nothing before its earliest start, after its latest or before its sheet is there. */
export function releases(context: AuditContext): Violation[] {
  return [...startFaults(context), ...setUpsTooEarly(context), ...sheetShortages(context)];
}
