import { useId, type JSX } from "react";
import type { LoadResponse, ResourceLoad } from "@formweek/contracts";
import { useFormat } from "../../format/use-format.ts";
import { BAR_PARTS, stackedBars } from "../../kernels/load-level.ts";
import { useText } from "../../text/text.ts";
import { bucketHead, bucketName } from "./load-words.ts";

interface LoadBarsProps {
  readonly load: LoadResponse;
  readonly resource: ResourceLoad;
  readonly name: string;
  /** Start of the chosen bucket. */
  readonly at: string | null;
  readonly onChoose: (at: string) => void;
}

const BAR = 30;
const HEIGHT = 150;

/** How the time of one resource is split, a bar a bucket, with the same as a table. */
export function LoadBars({ load, resource, name, at, onChoose }: LoadBarsProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const hatch = useId();
  const bars = stackedBars(resource);
  const width = Math.max(1, bars.length) * BAR;
  return (
    <figure className="load-bars">
      <figcaption>
        <h2>{text.load.bars(name)}</h2>
        <ul className="load-legend">
          {BAR_PARTS.map((part) => (
            <li key={part}>
              <span className={`swatch swatch-${part}`} aria-hidden="true" />
              {text.load.parts[part]}
            </li>
          ))}
        </ul>
      </figcaption>
      <div className="scroller bars-scroller" tabIndex={0} role="region" aria-label={text.load.bars(name)}>
        <svg
          viewBox={`0 0 ${width} ${HEIGHT + 18}`}
          width={width}
          height={HEIGHT + 18}
          aria-hidden="true"
          focusable="false"
        >
          <defs>
            <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse">
              <path d="M0 6 6 0" className="bar-hatch" />
            </pattern>
          </defs>
          {bars.map((pieces, index) => {
            const bucket = load.buckets[index];
            if (bucket === undefined) return null;
            return (
              <g key={bucket.start} className="bar" onClick={() => onChoose(bucket.start)}>
                <title>{bucketName(bucket, text, format)}</title>
                {bucket.start === at && (
                  <rect className="bar-chosen" x={index * BAR} y={0} width={BAR} height={HEIGHT + 18} />
                )}
                {pieces.map(({ part, from, to }) => {
                  const box = {
                    x: index * BAR + 3,
                    y: HEIGHT * (1 - to),
                    width: BAR - 6,
                    height: HEIGHT * (to - from),
                  };
                  return (
                    <g key={part}>
                      <rect className={`bar-${part}`} {...box} />
                      {(part === "closed" || part === "beyond") && <rect fill={`url(#${hatch})`} {...box} />}
                    </g>
                  );
                })}
                <text x={index * BAR + BAR / 2} y={HEIGHT + 14} textAnchor="middle">
                  {load.buckets.length > 26
                    ? new Date(bucket.start).getUTCDate()
                    : bucketHead(bucket, text, format)[0].replace(/^\D+/, "")}
                </text>
              </g>
            );
          })}
        </svg>
      </div>
      <LoadFigures load={load} resource={resource} name={name} />
    </figure>
  );
}

type LoadFiguresProps = Pick<LoadBarsProps, "load" | "resource" | "name">;

function LoadFigures({ load, resource, name }: LoadFiguresProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const hours = (seconds: number | undefined): string => format.decimal((seconds ?? 0) / 3600, 1);
  const parts = [...BAR_PARTS, "outside"] as const;
  return (
    <details>
      <summary>{text.load.figures}</summary>
      <div className="scroller figures-scroller" tabIndex={0} role="region" aria-label={text.load.figures}>
        <table className="table">
          <caption className="unseen">{text.load.bars(name)}</caption>
          <thead>
            <tr>
              <th scope="col">{text.load.time}</th>
              <th scope="col" className="number">
                {text.load.share}
              </th>
              {parts.map((part) => (
                <th key={part} scope="col" className="number">
                  {text.load.hoursOf(part === "outside" ? text.load.outside : text.load.parts[part])}
                </th>
              ))}
              <th scope="col">{text.load.basisTitle}</th>
            </tr>
          </thead>
          <tbody>
            {load.buckets.map((bucket, index) => {
              const share = resource.share[index] ?? null;
              return (
                <tr key={bucket.start}>
                  <th scope="row">{bucketName(bucket, text, format)}</th>
                  <td className="number">{share === null ? text.load.noHours : format.percentFine(share)}</td>
                  {parts.map((part) => (
                    <td key={part} className="number">
                      {hours(resource[part][index])}
                    </td>
                  ))}
                  <td>{text.load.basis[resource.basis[index] ?? "none"]}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </details>
  );
}
