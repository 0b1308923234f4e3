import type { Job } from "../problem/problem-data.ts";
import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import type { LotOnLine } from "./plan-look-ups.ts";
import { finding } from "./finding.ts";
import { sayDuration, sayInstant } from "./wording.ts";

function earliestStarts(context: AuditContext): Violation[] {
  return context.lots.flatMap((lot) => {
    const earliest = context.jobs.get(lot.orderId)?.earliestStartAt ?? lot.start;
    if (lot.start >= earliest) return [];
    const text = `Order ${lot.orderId} starts on line ${lot.lineId} ${sayInstant(context.problem, lot.start)}, ${sayDuration(earliest - lot.start)} before its earliest start.`;
    return [finding("starts-too-early", { ...lot, at: lot.start }, text)];
  });
}

function latestStarts(context: AuditContext): Violation[] {
  return context.lots.flatMap((lot) => {
    const latest = context.jobs.get(lot.orderId)?.latestStartAt ?? lot.start;
    if (lot.start <= latest) return [];
    const text = `Order ${lot.orderId} starts on line ${lot.lineId} ${sayInstant(context.problem, lot.start)}, ${sayDuration(lot.start - latest)} after its latest start.`;
    return [finding("starts-too-late", { ...lot, at: lot.start }, text)];
  });
}

/**
 * Where an option opens only at an instant, neither the run nor the change that serves it starts before; where changes
 * await the order's earliest start, no change that serves it does.
 */
function setUpsTooEarly(context: AuditContext): Violation[] {
  return context.problem.lines.flatMap((line) =>
    (context.stepsOfLine.get(line.id) ?? []).flatMap((step) => {
      if (step.kind !== "run") return [];
      const { segment, servedBy, heldFrom } = step;
      const earliest = context.jobs.get(segment.orderId)?.earliestStartAt ?? -Infinity;
      const from = Math.max(
        context.optionOf(segment.orderId, line.id, segment.setupId)?.availableFromAt ?? -Infinity,
        context.problem.changeAwaitsEarliestStart && servedBy !== null ? earliest : -Infinity,
      );
      const start = servedBy?.start ?? heldFrom;
      if (start >= from) return [];
      const text = `Line ${line.id} is set up for order ${segment.orderId} ${sayInstant(context.problem, start)}, ${sayDuration(from - start)} before that is possible.`;
      return [finding("set-up-too-early", { lineId: line.id, orderId: segment.orderId, at: start }, text)];
    }),
  );
}

/** Kilograms of sums of many lots carry rounding: a milligram and a part in 10^9 are let pass. */
function isShort(neededKg: number, suppliedKg: number): boolean {
  return neededKg > suppliedKg + 1e-6 + suppliedKg * 1e-9;
}

interface SheetUser {
  readonly lot: LotOnLine;
  readonly job: Job;
}

/** Lots of each sheet, in order of start. */
function usersBySheet({ lots, jobs }: AuditContext): Map<string, SheetUser[]> {
  const usersOf = new Map<string, SheetUser[]>();
  for (const lot of lots) {
    const job = jobs.get(lot.orderId);
    const sheetId = job?.sheetId ?? null;
    if (job === undefined || sheetId === null) continue;
    const users = usersOf.get(sheetId);
    if (users === undefined) usersOf.set(sheetId, [{ lot, job }]);
    else users.push({ lot, job });
  }
  return usersOf;
}

/** A sheet's supply covers, at the start of each lot, all lots that have started by then. One finding a lot. */
function sheetShortages(context: AuditContext): Violation[] {
  const found: Violation[] = [];
  const usersOf = usersBySheet(context);
  for (const sheet of context.problem.sheets) {
    const users = usersOf.get(sheet.id);
    if (sheet.stockKg === null || users === undefined) continue;
    const arrivals = [...sheet.arrivals].sort((a, b) => a.at - b.at);
    let suppliedKg = sheet.stockKg;
    let arrived = 0;
    let neededKg = 0;
    users.forEach(({ lot, job }, index) => {
      for (; arrived < arrivals.length && (arrivals[arrived]?.at ?? Infinity) <= lot.start; arrived += 1) {
        suppliedKg += arrivals[arrived]?.kg ?? 0;
      }
      neededKg += lot.pieces * job.sheetKgPerPiece;
      // Lots that start together draw together: judged at the last of them.
      if (users[index + 1]?.lot.start === lot.start || !isShort(neededKg, suppliedKg)) return;
      const text = `When order ${lot.orderId} starts ${sayInstant(context.problem, lot.start)}, ${neededKg.toFixed(1)} kg of sheet ${sheet.id} have been taken and ${suppliedKg.toFixed(1)} kg are there.`;
      found.push(finding("sheet-short", { ...lot, at: lot.start }, text));
    });
  }
  return found;
}

/** Rule 5: nothing before its earliest start, after its latest or before its sheet is there. */
export function releases(context: AuditContext): Violation[] {
  return [
    ...earliestStarts(context),
    ...latestStarts(context),
    ...setUpsTooEarly(context),
    ...sheetShortages(context),
  ];
}
