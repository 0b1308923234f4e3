/** Box in which a chart is drawn, CSS pixels; points keep `margin` away from its edges. */
export interface ChartBox {
  readonly width: number;
  readonly height: number;
  readonly margin: number;
}

export interface ChartPoint {
  readonly x: number;
  readonly y: number;
}

/** A value's share of the way from the least to the most; the middle where all are the same. */
function shares(values: readonly number[]): readonly number[] {
  const least = Math.min(...values);
  const span = Math.max(...values) - least;
  return values.map((value) => (span === 0 ? 0.5 : (value - least) / span));
}

/** Places of plans by two of their values: the least of each is left and at the bottom. */
export function chartPoints(
  values: readonly (readonly [across: number, up: number])[],
  { width, height, margin }: ChartBox,
): readonly ChartPoint[] {
  if (values.length === 0) return [];
  const across = shares(values.map(([value]) => value));
  const up = shares(values.map(([, value]) => value));
  return values.map((_, index) => ({
    x: margin + (across[index] ?? 0) * (width - 2 * margin),
    y: height - margin - (up[index] ?? 0) * (height - 2 * margin),
  }));
}

/** Places of two criteria among those that were weighed. */
export type Axes = readonly [across: number, up: number];

/** The two criteria in which plans differ most, as a share of the largest value; the first two where there is no difference. */
export function tellingAxes(plans: readonly (readonly number[])[]): Axes {
  const [first] = plans;
  const spreads = (first ?? []).map((_, index) => {
    const values = plans.map((plan) => plan[index] ?? 0);
    const most = Math.max(...values);
    return { index, spread: most === 0 ? 0 : (most - Math.min(...values)) / most };
  });
  const [one, other] = spreads.sort((a, b) => b.spread - a.spread || a.index - b.index);
  const pair = [one?.index ?? 0, other?.index ?? 0].sort((a, b) => a - b);
  return [pair[0] ?? 0, pair[1] ?? 0];
}
