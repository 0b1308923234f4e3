import type { FitRefusal, RateEntry } from "@formweek/contracts";

/** Why a product cannot run on a line, by product and line; a line that is not named takes it. */
export type RefusedLines = ReadonlyMap<string, ReadonlyMap<string, FitRefusal>>;

/** Of a line that gives no reason. */
const unnamed: FitRefusal = { code: "", text: "", numbers: {}, compared: null };

/** Reads from the rates which lines no mould of a product fits, with the first reason of each. */
export function refusedLines(entries: readonly RateEntry[]): RefusedLines {
  const refused = new Map<string, Map<string, FitRefusal>>();
  const taken = new Set<string>();
  for (const { productId, lineId, rate, refusals } of entries) {
    const lines = refused.get(productId) ?? new Map<string, FitRefusal>();
    refused.set(productId, lines);
    const key = `${productId}\n${lineId}`;
    if (rate !== null) {
      taken.add(key);
      lines.delete(lineId);
    } else if (!taken.has(key) && !lines.has(lineId)) lines.set(lineId, refusals[0] ?? unnamed);
  }
  return refused;
}
