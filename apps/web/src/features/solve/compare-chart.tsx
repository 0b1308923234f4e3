import type { TradeOffFindings } from "@formweek/contracts";
import type { JSX } from "react";
import { useFormat } from "../../format/use-format.ts";
import { chartPoints, type Axes } from "../../kernels/trade-off-chart.ts";
import { useText } from "../../text/text.ts";

const box = { width: 320, height: 240, margin: 38 };
const radius = 11;

interface CompareChartProps {
  readonly findings: TradeOffFindings;
  readonly axes: Axes;
  /** The plan that is pointed at, here or in the table. */
  readonly pointed: number | null;
  readonly onPoint: (place: number | null) => void;
}

/** Plans as numbered points; the table beside it says the same in figures. */
export function CompareChart({ findings, axes, pointed, onPoint }: CompareChartProps): JSX.Element {
  const { compare: text } = useText();
  const format = useFormat();
  const [across, up] = axes;
  const values = findings.plans.map((plan): readonly [number, number] => [
    plan.values[across] ?? 0,
    plan.values[up] ?? 0,
  ]);
  const points = chartPoints(values, box);
  const nameOf = (criterion: number): string => {
    const name = findings.criteria[criterion];
    return name === undefined ? "" : text.criteria[name];
  };
  const ends = (index: 0 | 1): readonly [string, string] => {
    const own = values.map((pair) => pair[index]);
    return [format.money(Math.min(...own)), format.money(Math.max(...own))];
  };
  const [leastAcross, mostAcross] = ends(0);
  const [leastUp, mostUp] = ends(1);
  return (
    <svg
      className="compare-chart"
      viewBox={`0 0 ${box.width} ${box.height}`}
      role="img"
      aria-label={text.chart(nameOf(across), nameOf(up))}
    >
      <path className="chart-axes" d={`M4 4V${box.height - 4}H${box.width - 4}`} />
      <text className="chart-mark" x={8} y={14}>
        {mostUp}
      </text>
      <text className="chart-mark" x={8} y={box.height - 22}>
        {leastUp}
      </text>
      <text className="chart-mark" x={8} y={box.height - 8}>
        {leastAcross}
      </text>
      <text className="chart-mark" x={box.width - 8} y={box.height - 8} textAnchor="end">
        {mostAcross}
      </text>
      {points.map(({ x, y }, place) => (
        <g
          key={place}
          className={place === pointed ? "chart-plan chart-plan-pointed" : "chart-plan"}
          onPointerEnter={() => onPoint(place)}
          onPointerLeave={() => onPoint(null)}
        >
          <circle cx={x} cy={y} r={radius} />
          <text x={x} y={y} textAnchor="middle" dominantBaseline="central">
            {place + 1}
          </text>
        </g>
      ))}
    </svg>
  );
}
