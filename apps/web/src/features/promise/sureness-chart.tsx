import type { SurenessResponse } from "@formweek/contracts";
import type { JSX } from "react";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { surenessMarks, type SurenessMarkKind } from "../../kernels/sureness-marks.ts";
import { useText } from "../../text/text.ts";

const width = 320;
const middle = 46;
/** Baselines of the words by order of time: marks that lie close still have their words apart. */
const wordsAt = [-16, 24, -31, 39] as const;

interface SurenessChartProps {
  readonly sure: SurenessResponse;
  readonly promised: string;
  readonly wantedAt: string | null;
}

const shapes: Readonly<Record<SurenessMarkKind, string>> = {
  promised: "M0 -8L7 0L0 8L-7 0Z",
  wanted: "M-1 12V-12H9L6 -8L9 -4H-1",
  at80: "M-5 -5H5V5H-5Z",
  at95: "M-5 -5H5V5H-5Z",
};

/** When it is ready on a scale of time: the band is where it falls four times in five, its tail up to 19 in 20. */
export function SurenessChart({ sure, promised, wantedAt }: SurenessChartProps): JSX.Element {
  const { promise: text } = useText();
  const format = useFormat();
  const read = (iso: string | null): number | null => (iso === null ? null : secondsOf(iso));
  const marks = surenessMarks({
    promised: secondsOf(promised),
    wanted: read(wantedAt),
    at80: read(sure.at80),
    at95: read(sure.at95),
  });
  const xOf = (kind: SurenessMarkKind): number | null => {
    const mark = marks.find((each) => each.kind === kind);
    return mark === undefined ? null : mark.share * width;
  };
  const [x80, x95] = [xOf("at80"), xOf("at95")];
  const told = marks.map(({ kind, at }) => `${text.chart[kind]} ${format.instant(at)}`).join("; ");
  return (
    <svg className="sure-chart" viewBox={`0 0 ${width} 90`} role="img" aria-label={text.chartText(told)}>
      <path className="sure-axis" d={`M0 ${middle}H${width}`} />
      <rect className="sure-most" x={0} y={middle - 5} width={x80 ?? width} height={10} />
      {x80 !== null && (
        <rect className="sure-tail" x={x80} y={middle - 5} width={(x95 ?? width) - x80} height={10} />
      )}
      {marks.map(({ kind, share }, place) => (
        <g
          key={kind}
          className={`sure-mark sure-${kind}`}
          transform={`translate(${share * width} ${middle})`}
        >
          <path d={shapes[kind]} />
          <text y={wordsAt[place]} textAnchor={share < 0.2 ? "start" : share > 0.8 ? "end" : "middle"}>
            {text.chart[kind]}
          </text>
        </g>
      ))}
    </svg>
  );
}
