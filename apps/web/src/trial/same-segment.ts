import type { MouldCopy, PlannedLot, Segment } from "@formweek/scheduler";

/** Two segments of the engine tell the same: every field of theirs is alike. */
export function isSameSegment(a: Segment, b: Segment): boolean {
  if (a.start !== b.start || a.end !== b.end || a.lineId !== b.lineId) return false;
  switch (a.kind) {
    case "run":
      return (
        b.kind === "run" &&
        a.orderId === b.orderId &&
        a.lot === b.lot &&
        a.pieces === b.pieces &&
        a.setupId === b.setupId &&
        a.productId === b.productId &&
        isSameCopy(a.mould, b.mould)
      );
    case "stop":
      return b.kind === "stop" && a.reason === b.reason && a.orderId === b.orderId && a.lot === b.lot;
    case "change":
      return (
        b.kind === "change" &&
        a.mountStart === b.mountStart &&
        a.tailStart === b.tailStart &&
        a.changeSpec === b.changeSpec &&
        a.stripping === b.stripping &&
        a.fromSetupId === b.fromSetupId &&
        a.toSetupId === b.toSetupId &&
        a.teamId === b.teamId &&
        a.trolleyId === b.trolleyId &&
        isSameCopy(a.mouldOut, b.mouldOut) &&
        isSameCopy(a.mouldIn, b.mouldIn)
      );
  }
}

/** Two lots are planned alike. */
export function isSamePlanned(a: PlannedLot, b: PlannedLot): boolean {
  return (
    a.orderId === b.orderId &&
    a.lot === b.lot &&
    a.lineId === b.lineId &&
    a.start === b.start &&
    a.end === b.end &&
    a.finish === b.finish &&
    a.pieces === b.pieces &&
    a.setupId === b.setupId &&
    a.turn === b.turn
  );
}

function isSameCopy(a: MouldCopy | null, b: MouldCopy | null): boolean {
  return a?.mouldId === b?.mouldId && a?.copy === b?.copy;
}
