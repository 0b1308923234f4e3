/** Kilograms that come, or are used (negative), at an instant or by it. */
export interface SheetMove {
  readonly at: number;
  readonly kg: number;
}

/** When a sheet runs out, and what is missing. */
export interface SheetRunOut {
  /** The stock falls below nothing with this use. */
  readonly at: number;
  /** First arrival after that; null: none is known. */
  readonly nextArrivalAt: number | null;
  /** Most that is missing before the next arrival, kg. */
  readonly missingKg: number;
}

/** Below this much a shortage is rounding, kg. */
const SLACK_KG = 0.5;

/**
 * The first time that a sheet runs out before its next arrival; null when it lasts. Arrivals and uses come in any order; at one
 * instant arrivals count first. A sheet of unknown stock (null) always lasts.
 */
export function sheetRunOut(
  stockKg: number | null,
  arrivals: readonly SheetMove[],
  uses: readonly SheetMove[],
): SheetRunOut | null {
  if (stockKg === null) return null;
  const moves = [
    ...arrivals.map(({ at, kg }) => ({ at, kg, isArrival: true })),
    ...uses.map(({ at, kg }) => ({ at, kg: -kg, isArrival: false })),
  ].sort((a, b) => a.at - b.at || Number(b.isArrival) - Number(a.isArrival));
  let stock = stockKg;
  let ranOut = null as { readonly at: number; readonly missingKg: number } | null;
  for (const { at, kg, isArrival } of moves) {
    if (ranOut !== null && isArrival) return { ...ranOut, nextArrivalAt: at };
    stock += kg;
    if (stock >= -SLACK_KG) continue;
    ranOut = { at: ranOut?.at ?? at, missingKg: Math.max(ranOut?.missingKg ?? 0, -stock) };
  }
  return ranOut === null ? null : { ...ranOut, nextArrivalAt: null };
}
