import type { JSX } from "react";
import { useFormat } from "../../format/use-format.ts";
import type { DifferencePicture as Picture, PictureRun } from "../../kernels/difference-picture.ts";
import { dayMarks } from "../../kernels/time-marks.ts";
import { zoneClock } from "../../kernels/zone-clock.ts";
import { useText } from "../../text/text.ts";

const width = 1000;
const labelWidth = 120;
const axisHeight = 24;
const trackHeight = 20;
const trackGap = 14;
const lineHeight = 2 * trackHeight + trackGap + 20;
/** The date of a day whose first hour a clock change skips is still its own. */
const NOON = 43_200;
const mostDays = 10;
const widestLabelPx = 7;

interface DifferencePictureProps {
  readonly picture: Picture;
  readonly timeZone: string;
}

/** Both plans' runs of the lines that differ, one track above the other, what moved joined by a line. */
export function DifferencePicture({ picture, timeZone }: DifferencePictureProps): JSX.Element {
  const { versions: text } = useText();
  const format = useFormat();
  const { lines, start, end } = picture;
  const height = axisHeight + lines.length * lineHeight;
  const xOf = (at: number): number => labelWidth + ((at - start) / (end - start)) * (width - labelWidth);
  const moved = lines.flatMap(({ to }) => to).filter(({ hasMoved }) => hasMoved).length;
  const topOf = (index: number, isAfter: boolean): number =>
    axisHeight + index * lineHeight + (isAfter ? trackHeight + trackGap : 0) + 6;
  return (
    <section>
      <h3>{text.picture}</h3>
      <p className="hint">{text.pictureHint}</p>
      <div className="scroller picture-scroller" tabIndex={0} role="region" aria-label={text.picture}>
        <svg
          className="difference-picture"
          viewBox={`0 0 ${width} ${height}`}
          role="img"
          aria-label={text.pictureText(format.count(lines.length), format.count(moved))}
        >
          {daysWithin(timeZone, start, end).map((at) => (
            <g key={at}>
              <path className="picture-day" d={`M${xOf(at)} ${axisHeight - 6}V${height}`} />
              <text className="picture-small" x={xOf(at) + 3} y={axisHeight - 9}>
                {format.day(at + NOON)}
              </text>
            </g>
          ))}
          {lines.map((line, index) => (
            <g key={line.lineId}>
              <text className="picture-line" x={4} y={topOf(index, false) + 15}>
                {line.name}
              </text>
              <text
                className="picture-small"
                x={labelWidth - 8}
                y={topOf(index, false) + 14}
                textAnchor="end"
              >
                {text.tracks.from}
              </text>
              <text className="picture-small" x={labelWidth - 8} y={topOf(index, true) + 14} textAnchor="end">
                {text.tracks.to}
              </text>
              <Track runs={line.from} top={topOf(index, false)} xOf={xOf} kind="from" />
              <Track runs={line.to} top={topOf(index, true)} xOf={xOf} kind="to" />
              <path className="picture-rule" d={`M0 ${axisHeight + (index + 1) * lineHeight}H${width}`} />
            </g>
          ))}
          <Ties picture={picture} xOf={xOf} topOf={topOf} />
        </svg>
      </div>
    </section>
  );
}

interface TrackProps {
  readonly runs: readonly PictureRun[];
  readonly top: number;
  readonly xOf: (at: number) => number;
  readonly kind: "from" | "to";
}

function Track({ runs, top, xOf, kind }: TrackProps): JSX.Element {
  return (
    <>
      {runs.map((run) => {
        const x = Math.max(labelWidth, xOf(run.start));
        const wide = Math.max(2, Math.min(width, xOf(run.end)) - x);
        const hasRoom = wide > run.orderId.length * widestLabelPx + 8;
        return (
          <g key={run.key}>
            <rect
              className={`picture-run picture-run-${run.hasMoved ? kind : "still"}`}
              x={x}
              y={top}
              width={wide}
              height={trackHeight}
              rx={3}
            />
            {hasRoom && (
              <text
                className={run.hasMoved ? `picture-order picture-order-${kind}` : "picture-order"}
                x={x + 4}
                y={top + 14}
              >
                {run.orderId}
              </text>
            )}
          </g>
        );
      })}
    </>
  );
}

interface TiesProps {
  readonly picture: Picture;
  readonly xOf: (at: number) => number;
  readonly topOf: (lineIndex: number, isAfter: boolean) => number;
}

/** From the middle of where a moved run was to the middle of where it is. */
function Ties({ picture, xOf, topOf }: TiesProps): JSX.Element {
  const ends = new Map(
    picture.lines.flatMap(({ to }, index) =>
      to.map((run) => [run.key, { x: xOf((run.start + run.end) / 2), y: topOf(index, true) }] as const),
    ),
  );
  return (
    <>
      {picture.lines.flatMap(({ from }, index) =>
        from.flatMap((run) => {
          const end = ends.get(run.key);
          if (!run.hasMoved || end === undefined) return [];
          const x = xOf((run.start + run.end) / 2);
          const y = topOf(index, false) + trackHeight;
          return [<path key={run.key} className="picture-tie" d={`M${x} ${y}L${end.x} ${end.y}`} />];
        }),
      )}
    </>
  );
}

/** Local midnights, at most so many that their words have room. */
function daysWithin(zone: string, start: number, end: number): readonly number[] {
  const days = dayMarks(zoneClock(zone), start, end).filter(({ at }) => at >= start);
  const step = Math.ceil(days.length / mostDays);
  return days.filter((_, index) => index % step === 0).map(({ at }) => at);
}
