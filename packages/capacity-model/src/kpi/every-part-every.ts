export interface ProductMix {
  /** Time that the line really has in the period, losses taken off, hours. */
  readonly availableHours: number;
  /** Running time of everything that is needed in the period, hours. */
  readonly runHours: number;
  /** One change, hours, > 0. */
  readonly changeHours: number;
  /** Products that share the line, >= 1. */
  readonly products: number;
}

export interface EveryPartEvery {
  /** Changes that the time left over allows in the period. */
  readonly changesPerPeriod: number;
  /** Periods until every product has had its turn; null where running leaves no time for changes. */
  readonly periods: number | null;
}

/** How often a line can make every one of its products, changes included (every part every interval). Source: lean practice texts. */
export function everyPartEvery({
  availableHours,
  runHours,
  changeHours,
  products,
}: ProductMix): EveryPartEvery {
  const changesPerPeriod = Math.max(0, availableHours - runHours) / changeHours;
  return { changesPerPeriod, periods: changesPerPeriod === 0 ? null : products / changesPerPeriod };
}
