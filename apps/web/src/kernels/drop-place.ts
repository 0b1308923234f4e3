import type { LotName } from "@formweek/contracts";
import type { BoardLine, BoardPlan } from "./board-plan.ts";
import { isSameLot, lotsOfLine } from "./line-lots.ts";

/** A place in a line's sequence where a lot can be put. */
export interface DropPlace {
  readonly lineIndex: number;
  /** The lot that comes right after it; null: it would be the last of the line. */
  readonly before: LotName | null;
  /** Where the place lies on the standing plan, seconds since the epoch. */
  readonly at: number;
  /** The lot lies there already. */
  readonly isHome: boolean;
}

export type PlaceStep = "earlier" | "later" | "line above" | "line below" | "first on line" | "last on line";

/** Every place of a line for a lot, in order: one more than the line has other lots. `carried` null: a lot that is not planned yet. */
function placesOfLine(plan: BoardPlan, line: BoardLine, carried: LotName | null): readonly DropPlace[] {
  const lots = lotsOfLine(line);
  const home = carried === null ? -1 : lots.findIndex((lot) => isSameLot(lot, carried));
  const others = lots.filter((_, index) => index !== home);
  const places = others.map((before, index) => ({
    lineIndex: line.index,
    before: { orderId: before.orderId, lot: before.lot },
    at: before.start,
    isHome: index === home,
  }));
  const last = others.at(-1);
  return [
    ...places,
    {
      lineIndex: line.index,
      before: null,
      at: last?.end ?? plan.startAt,
      isHome: others.length === home,
    },
  ];
}

/** The place for a lot that is held over an instant of a line: after every other lot whose middle lies before it. */
export function dropPlaceAt(
  plan: BoardPlan,
  carried: LotName | null,
  { lineIndex, instant }: { readonly lineIndex: number; readonly instant: number },
): DropPlace | null {
  const line = plan.lines[lineIndex];
  if (line === undefined) return null;
  const others = lotsOfLine(line).filter((lot) => carried === null || !isSameLot(lot, carried));
  const passed = others.filter((lot) => (lot.start + lot.end) / 2 < instant).length;
  return placesOfLine(plan, line, carried)[passed] ?? null;
}

/** The place where a lot lies now; null when the plan does not have it. */
export function homePlace(plan: BoardPlan, carried: LotName): DropPlace | null {
  for (const line of plan.lines) {
    const home = placesOfLine(plan, line, carried).find((place) => place.isHome);
    if (home !== undefined) return home;
  }
  return null;
}

/** The place that the keyboard reaches by one step; the same one where there is none that way. */
export function stepPlace(plan: BoardPlan, carried: LotName, from: DropPlace, step: PlaceStep): DropPlace {
  if (step === "line above" || step === "line below") {
    const lineIndex = from.lineIndex + (step === "line above" ? -1 : 1);
    return dropPlaceAt(plan, carried, { lineIndex, instant: from.at }) ?? from;
  }
  const line = plan.lines[from.lineIndex];
  const places = line === undefined ? [] : placesOfLine(plan, line, carried);
  const now = places.findIndex((place) => isSamePlace(place, from));
  const next = { earlier: now - 1, later: now + 1, "first on line": 0, "last on line": places.length - 1 };
  return places[next[step]] ?? from;
}

export function isSamePlace(a: DropPlace, b: DropPlace): boolean {
  if (a.lineIndex !== b.lineIndex) return false;
  return a.before === null || b.before === null ? a.before === b.before : isSameLot(a.before, b.before);
}
