import type { JSX } from "react";
import type { SolveRunResponse } from "@formweek/contracts";
import { useFormat } from "../../format/use-format.ts";
import { curvePath } from "../../kernels/curve-path.ts";
import { useText } from "../../text/text.ts";

const width = 110;
const height = 40;

/** The cost of the best plan over the time spent so far, as a falling line. */
export function SolveCurve({ run }: { readonly run: SolveRunResponse }): JSX.Element {
  const { solve: text } = useText();
  const format = useFormat();
  const first = run.curve[0];
  const last = run.curve.at(-1);
  const path = curvePath(run.curve, { width, height: height - 6, endX: run.progress?.elapsedMs ?? 0 });
  const words =
    first === undefined || last === undefined
      ? text.curve
      : first[1] === last[1]
        ? text.curveFlat(format.money(last[1]))
        : text.curveText(format.money(first[1]), format.money(last[1]));
  return (
    <svg
      className="solve-curve"
      viewBox={`0 -3 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={words}
    >
      <path className="curve-ground" d={`M0 ${height - 6}H${width}`} />
      <path className="curve-line" d={path} />
    </svg>
  );
}
