import { useRef, useState, type JSX, type KeyboardEvent } from "react";
import type { LoadResponse, ResourceLoad } from "@formweek/contracts";
import { useFormat } from "../../format/use-format.ts";
import { gridMove, loadLevel, type GridPlace } from "../../kernels/load-level.ts";
import { useText } from "../../text/text.ts";
import { bucketHead, bucketName } from "./load-words.ts";

interface HeatMapProps {
  readonly load: LoadResponse;
  readonly nameOf: (id: string) => string;
  readonly chosen: { readonly id: string | null; readonly at: string | null };
  readonly onChoose: (cell: { readonly id: string; readonly at: string }) => void;
}

/** Load of every resource in every bucket; a grid to walk through by arrow keys, with the percentages as text. */
export function HeatMap({ load, nameOf, chosen, onChoose }: HeatMapProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const table = useRef<HTMLTableElement>(null);
  const chosenPlace = {
    row: Math.max(
      0,
      load.resources.findIndex(({ id }) => id === chosen.id),
    ),
    column: Math.max(
      0,
      load.buckets.findIndex(({ start }) => start === chosen.at),
    ),
  };
  const [walked, setWalked] = useState<GridPlace | null>(null);
  const place = walked ?? chosenPlace;
  const size = { rows: load.resources.length, columns: load.buckets.length };
  const pressed = (event: KeyboardEvent): void => {
    const next = gridMove(event.key, place, size);
    if (next === null) return;
    event.preventDefault();
    setWalked(next);
    const cell = table.current?.rows[next.row + 1]?.cells[next.column + 1]?.querySelector("button");
    cell?.focus();
  };
  return (
    <div className="scroller load-scroller">
      <table ref={table} className="heat-map" role="grid" aria-label={text.load.grid} onKeyDown={pressed}>
        <thead>
          <tr>
            <th scope="col" className="heat-name">
              {text.load.resource}
            </th>
            {load.buckets.map((bucket) => {
              const [top, below] = bucketHead(bucket, text, format);
              return (
                <th key={bucket.start} scope="col">
                  {top}
                  {below !== "" && <small>{below}</small>}
                </th>
              );
            })}
          </tr>
        </thead>
        <tbody>
          {load.resources.map((resource, row) => (
            <tr key={resource.id} className={resource.id === chosen.id ? "heat-chosen" : undefined}>
              <th scope="row" className="heat-name" title={resource.id}>
                {nameOf(resource.id)}
              </th>
              {load.buckets.map((bucket, column) => (
                <td
                  key={bucket.start}
                  role="gridcell"
                  aria-selected={resource.id === chosen.id && bucket.start === chosen.at}
                >
                  <HeatCell
                    resource={resource}
                    at={column}
                    label={`${nameOf(resource.id)}, ${bucketName(bucket, text, format)}`}
                    isStop={row === place.row && column === place.column}
                    onFocus={() => setWalked({ row, column })}
                    onPress={() => onChoose({ id: resource.id, at: bucket.start })}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface HeatCellProps {
  readonly resource: ResourceLoad;
  readonly at: number;
  readonly label: string;
  /** The one cell that Tab leads to. */
  readonly isStop: boolean;
  readonly onFocus: () => void;
  readonly onPress: () => void;
}

function HeatCell({ resource, at, label, isStop, onFocus, onPress }: HeatCellProps): JSX.Element {
  const { load: text } = useText();
  const format = useFormat();
  const share = resource.share[at] ?? null;
  const basis = resource.basis[at] ?? "none";
  const level = loadLevel(share, resource.beyond[at] ?? 0);
  const said =
    share === null
      ? level === "over"
        ? text.noHoursWork
        : text.noHours
      : `${text.percent(format.percent(share))}, ${text.basis[basis]}`;
  const isRough = basis === "rough-cut" || basis === "both";
  const shown = share === null ? (level === "over" ? "▲" : "–") : format.count(Math.round(share * 100));
  return (
    <button
      type="button"
      className={`heat-cell heat-${level}`}
      data-basis={basis}
      tabIndex={isStop ? 0 : -1}
      aria-label={`${label}: ${said}`}
      title={`${label}: ${said}`}
      onFocus={onFocus}
      onClick={onPress}
    >
      <span aria-hidden="true">
        {level === "over" && share !== null ? "▲" : ""}
        {isRough && share !== null ? text.roughMark : ""}
        {basis === "none" && share !== null ? "·" : shown}
      </span>
    </button>
  );
}
