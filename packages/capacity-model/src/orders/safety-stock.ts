export interface DemandUncertainty {
  /** Standard normal quantile of the wanted service, e.g. 1.645 for 95 %. */
  readonly serviceFactor: number;
  /** Mean and standard deviation of demand, pieces per week. */
  readonly demandPerWeek: number;
  readonly demandSpreadPerWeek: number;
  /** Mean and standard deviation of the time to replenish, weeks. */
  readonly leadTimeWeeks: number;
  readonly leadTimeSpreadWeeks: number;
}

/**
 * Safety stock in whole pieces: z × sqrt(L × σ_d² + d² × σ_L²), independent demand and lead time, rounded up.
 * 0 without any spread. Source: the usual textbook formula (from memory).
 */
export function safetyStockPieces(uncertainty: DemandUncertainty): number {
  const { serviceFactor, demandPerWeek, demandSpreadPerWeek, leadTimeWeeks, leadTimeSpreadWeeks } =
    uncertainty;
  const variance = leadTimeWeeks * demandSpreadPerWeek ** 2 + (demandPerWeek * leadTimeSpreadWeeks) ** 2;
  return Math.max(0, Math.ceil(serviceFactor * Math.sqrt(variance) - 1e-9));
}
