import type { ProblemMould } from "../problem/problem-data.ts";
import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import type { LotOnLine } from "./plan-look-ups.ts";
import { finding } from "./finding.ts";
import { sayDuration, sayInstant } from "./wording.ts";

function sayCopy(mouldId: string, copy: number): string {
  return `mould ${mouldId} copy ${copy + 1}`;
}

/** Lots by the mould copy that makes them, in order of start; lots without a mould under null. */
function lotsByCopy(context: AuditContext): Map<string | null, LotOnLine[]> {
  const groups = new Map<string | null, LotOnLine[]>();
  for (const lot of context.lots) {
    const mould = lot.stretches[0]?.mould ?? null;
    const key = mould === null ? null : `${mould.copy} ${mould.mouldId}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [lot]);
    else group.push(lot);
  }
  return groups;
}

function cyclesFor(lot: LotOnLine): number {
  return Math.ceil(lot.pieces / (lot.option?.piecesPerCycle ?? 1));
}

/** The service of a lot lasts as it should and is the last thing on the line before its run. */
function formFaults(context: AuditContext, lot: LotOnLine, seconds: number): Violation[] {
  const [service] = lot.services;
  if (service === undefined) return [];
  const found: Violation[] = [];
  const subject = { lineId: service.lineId, orderId: lot.orderId, at: service.start };
  const length = service.end - service.start;
  if (length !== seconds) {
    const text = `The service before order ${lot.orderId} takes ${sayDuration(length)}; ${sayDuration(seconds)} are needed.`;
    found.push(finding("wrong-service", subject, text));
  }
  const onLine = context.segmentsOfLine.get(service.lineId) ?? [];
  if (onLine[onLine.indexOf(service) + 1] !== lot.stretches[0]) {
    const text = `The service before order ${lot.orderId} ${sayInstant(context.problem, service.start)} on line ${service.lineId} is not followed by its run.`;
    found.push(finding("wrong-service", subject, text));
  }
  return found;
}

/** The services that a lot needs before it; the words are asked for at a fault only. */
interface Due {
  readonly count: number;
  readonly why: () => string;
}

const NEVER_SERVED: Due = { count: 0, why: () => "its mould is never served" };

/** Whether a lot has exactly the services that are due before it. */
function dueFaults(context: AuditContext, lot: LotOnLine, due: Due): Violation[] {
  const given = lot.services.length;
  if (given === due.count) return [];
  const subject = { lineId: lot.lineId, orderId: lot.orderId, at: lot.services[0]?.start ?? lot.start };
  const text = `Before order ${lot.orderId} lot ${lot.lot + 1} on line ${lot.lineId} lie ${given} services; ${due.count} are due: ${due.why()}.`;
  return [finding(given < due.count ? "service-missing" : "service-not-due", subject, text)];
}

function copyFaults(
  context: AuditContext,
  lots: readonly LotOnLine[],
  mould: ProblemMould | null,
): Violation[] {
  const rule = mould?.service;
  if (mould === null || rule === undefined)
    return lots.flatMap((lot) => dueFaults(context, lot, NEVER_SERVED));
  const copy = lots[0]?.stretches[0]?.mould?.copy ?? 0;
  let cycles = rule.cyclesDone[copy] ?? 0;
  return lots.flatMap((lot) => {
    const needed = cyclesFor(lot);
    const done = cycles;
    const why = (): string =>
      `${sayCopy(mould.id, copy)} has done ${done} cycles, the lot needs ${needed}, ${rule.afterCycles} may be done between services`;
    const isDue = cycles > 0 && cycles + needed > rule.afterCycles;
    cycles = isDue ? needed : cycles + needed;
    return [
      ...dueFaults(context, lot, { count: isDue ? 1 : 0, why }),
      ...(isDue ? formFaults(context, lot, rule.seconds) : []),
    ];
  });
}

/** Rule 2: every copy is served when its cycles ask for it, on the line, before the lot, and at no other time. */
export function mouldService(context: AuditContext): Violation[] {
  return [...lotsByCopy(context).values()].flatMap((lots) => {
    const mouldId = lots[0]?.stretches[0]?.mould?.mouldId ?? null;
    return copyFaults(context, lots, mouldId === null ? null : (context.moulds.get(mouldId) ?? null));
  });
}
