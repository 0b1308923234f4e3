/** A falling curve as an SVG path within a box; points are (x, y) in ascending x. */
export interface CurveBox {
  readonly width: number;
  readonly height: number;
  readonly endX: number;
}

/**
 * Step path of the best cost over time: it holds its value until the next better one, and up to `endX`.
 * The greatest value touches the top, the least the bottom; a flat curve lies in the middle. Empty without points.
 */
export function curvePath(points: readonly (readonly [number, number])[], box: CurveBox): string {
  const first = points[0];
  if (first === undefined) return "";
  const values = points.map(([, value]) => value);
  const top = Math.max(...values);
  const bottom = Math.min(...values);
  const endX = Math.max(box.endX, points.at(-1)?.[0] ?? 0, 1);
  const x = (at: number): string => ((at / endX) * box.width).toFixed(1);
  const y = (value: number): string =>
    (top === bottom ? box.height / 2 : ((top - value) / (top - bottom)) * box.height).toFixed(1);
  const steps = points.slice(1).map(([at, value]) => `H${x(at)}V${y(value)}`);
  return `M${x(first[0])} ${y(first[1])}${steps.join("")}H${box.width.toFixed(1)}`;
}
