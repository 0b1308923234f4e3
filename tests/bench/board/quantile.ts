/** The value below which a share of the values lies, the nearest rank; NaN of none. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

/** Share of the values above a limit, percent. */
export function percentOver(values: readonly number[], limit: number): number {
  return (100 * values.filter((value) => value > limit).length) / Math.max(1, values.length);
}
