import type { MouldCopy, Plan, ProblemData, Segment, UnplannedReason } from "@formweek/scheduler";
import { instantOfIso } from "./iso-instant.ts";
import type { DocumentMould, DocumentSegment, PlanDocument } from "./plan-document.ts";

/**
 * The scheduler's plan behind a document, against the problem that it was made from: the inverse of `describePlan`. What
 * does not belong to the problem comes through as it is, for the audit to find; an unreadable instant becomes NaN.
 */
export function planOfDocument(document: PlanDocument, problem: ProblemData): Plan {
  return {
    segments: document.segments.map((segment) => segmentOf(segment, problem)),
    lots: document.lots.map((lot) => ({
      ...lot,
      start: instant(lot.start),
      end: instant(lot.end),
      finish: instant(lot.finish),
    })),
    unplanned: document.unplanned.map((order) => ({
      ...order,
      reasons: order.reasons as readonly UnplannedReason[],
    })),
    objective: document.objective as Plan["objective"],
  };
}

const instant = (text: string): number => instantOfIso(text) ?? Number.NaN;

const mouldOf = (mould: DocumentMould | null): MouldCopy | null =>
  mould === null ? null : { mouldId: mould.mouldId, copy: mould.copy - 1 };

function segmentOf(segment: DocumentSegment, problem: ProblemData): Segment {
  const placed = { lineId: segment.lineId, start: instant(segment.start), end: instant(segment.end) };
  switch (segment.kind) {
    case "run":
      return {
        kind: "run",
        ...placed,
        orderId: segment.orderId,
        lot: segment.lot,
        productId: segment.productId,
        setupId: segment.setupId,
        mould: mouldOf(segment.mould),
        pieces: segment.pieces,
      };
    case "stop":
      return { kind: "stop", ...placed, reason: segment.reason, orderId: segment.orderId, lot: segment.lot };
    case "change":
      return {
        kind: "change",
        ...placed,
        fromSetupId: segment.fromSetupId,
        toSetupId: segment.toSetupId,
        changeSpec: specOf(problem, segment),
        stripping: segment.stripping,
        teamId: segment.teamId,
        trolleyId: segment.trolleyId,
        mountStart: instant(segment.mountStart),
        tailStart: instant(segment.tailStart),
        mouldOut: mouldOf(segment.mouldOut),
        mouldIn: mouldOf(segment.mouldIn),
      };
  }
}

/** The spec that the line's matrix holds for the change; -1 where it has none, which the audit refuses. */
function specOf(problem: ProblemData, change: Extract<DocumentSegment, { readonly kind: "change" }>): number {
  const line = problem.lines.find((record) => record.id === change.lineId);
  const matrix = problem.changeClasses.find((record) => record.id === line?.changeClassId)?.matrix;
  const indexOf = (setupId: string | null): number =>
    problem.setups.findIndex((setup) => setup.id === setupId);
  return matrix?.[indexOf(change.fromSetupId)]?.[indexOf(change.toSetupId)] ?? -1;
}
