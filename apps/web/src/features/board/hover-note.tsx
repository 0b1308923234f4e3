import type { JSX } from "react";
import { useFormat } from "../../format/use-format.ts";
import { pieceOfSegment } from "../../kernels/board-rows.ts";
import { rowTopPx } from "../../kernels/row-layout.ts";
import { xOfInstant } from "../../kernels/time-scale.ts";
import { layoutOf, rowsOf } from "../../state/board-view.ts";
import { useText } from "../../text/text.ts";
import type { PlanNames } from "../../format/plan-names.ts";
import { useBoard } from "./use-board.ts";

const noteWidthPx = 250;

/** A short note beside what the pointer is on: names and minutes that have no room on the board itself. */
export function HoverNote({ names }: { readonly names: PlanNames }): JSX.Element | null {
  const text = useText();
  const format = useFormat();
  const hover = useBoard((state) => state.hover);
  const state = useBoard((whole) => (whole.hover?.kind === "segment" ? whole : null));
  const rows = state === null ? null : rowsOf(state);
  if (state === null || rows === null || hover?.kind !== "segment") return null;
  const piece = pieceOfSegment(rows, hover.index, hover.rowIndex);
  if (piece === null) return null;
  const { segment } = piece;
  const layout = layoutOf(state);
  const { source } = segment;
  const x = layout.labelWidthPx + Math.max(0, xOfInstant(state.view, piece.start));
  const top = rowTopPx(layout, state.view.scrollPx, piece.rowIndex);
  const isLow = top > layout.heightPx * 0.65;
  const span = format.span(segment.end - segment.start);
  return (
    <div
      className="hover-note"
      aria-hidden="true"
      style={{
        left: Math.max(4, Math.min(x, layout.widthPx - noteWidthPx - 8)),
        ...(isLow ? { bottom: layout.heightPx - top + 4 } : { top: top + layout.rowHeightPx + 2 }),
      }}
    >
      {source.kind === "run" && (
        <>
          <strong>
            {text.details.order(source.orderId)} · {source.customer}
          </strong>
          <span>{source.productName}</span>
          <span>
            {source.mouldName} · {text.units.pieces(format.count(source.pieces))} · {source.colour.name}
          </span>
          {source.lateSeconds > 0 && (
            <span className="late-words">{text.board.late(format.span(source.lateSeconds))}</span>
          )}
        </>
      )}
      {source.kind === "change" && (
        <>
          <strong>
            {source.stripping ? text.details.stripping : text.details.change} · {span}
          </strong>
          <span>
            {names.mould(source.mouldOut)} → {names.mould(source.mouldIn)}
          </span>
        </>
      )}
      {source.kind === "stop" && (
        <strong>
          {text.board.stop[source.reason]} · {span}
        </strong>
      )}
      {rows.choice !== "lines" && <span>{rows.plan.lines[segment.lineIndex]?.name}</span>}
      <span className="hint">
        {format.instant(segment.start)} – {format.instant(segment.end)}
      </span>
    </div>
  );
}
