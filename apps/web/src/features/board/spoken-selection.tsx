import type { JSX } from "react";
import type { Format } from "../../format/format.ts";
import { useFormat } from "../../format/use-format.ts";
import type { PlanNames } from "../../format/plan-names.ts";
import { pieceOfSegment, type BoardRows } from "../../kernels/board-rows.ts";
import type { BoardSegment } from "../../kernels/board-plan.ts";
import type { HeldOrders, PromisedOrders } from "../../kernels/held-order.ts";
import { rowsOf } from "../../state/board-view.ts";
import type { Selection } from "../../state/board-state.ts";
import { useText, type Text } from "../../text/text.ts";
import { pieceWords } from "../../format/piece-words.ts";
import { rowName } from "../../format/row-words.ts";
import { useBoard } from "./use-board.ts";

/** What is selected, in a sentence for screen readers: changes as the keyboard walks. */
export function SpokenSelection({
  held,
  promised,
  names,
}: {
  readonly held: HeldOrders;
  readonly promised: PromisedOrders;
  readonly names: PlanNames;
}): JSX.Element {
  const text = useText();
  const format = useFormat();
  const rows = useBoard(rowsOf);
  const selection = useBoard((state) => state.selection);
  const isCarrying = useBoard((state) => state.carry !== null);
  // What is carried has a voice of its own.
  const spoken = isCarrying
    ? ""
    : rows === null || selection === null
      ? text.board.nothingSelected
      : sentence(rows, selection, { held, promised, names, text, format });
  return (
    <div className="unseen" role="status" aria-live="polite">
      {spoken}
    </div>
  );
}

interface Words {
  readonly held: HeldOrders;
  readonly promised: PromisedOrders;
  readonly names: PlanNames;
  readonly text: Text;
  readonly format: Format;
}

function sentence(
  rows: BoardRows,
  selection: Selection,
  { held, promised, names, text, format }: Words,
): string {
  const { details } = text;
  if (selection.kind === "order") return details.order(selection.orderId);
  if (selection.kind === "line")
    return rows.plan.lines.find(({ id }) => id === selection.lineId)?.name ?? text.board.nothingSelected;
  if (selection.kind === "gap") {
    const row = rows.rows[selection.rowIndex];
    const span = format.span(selection.end - selection.start);
    return `${row === undefined ? "" : rowName(row, names)}: ${details.gap}, ${span}`;
  }
  const segment = rows.plan.segments[selection.index];
  if (segment === undefined) return text.board.nothingSelected;
  const place = placeName(rows, segment, { rowIndex: selection.rowIndex, names });
  return pieceWords(segment, { place, held, promised, text, format });
}

/** The line, and before it the row where rows are of something else. */
function placeName(
  rows: BoardRows,
  segment: BoardSegment,
  { rowIndex, names }: { readonly rowIndex: number | undefined; readonly names: PlanNames },
): string {
  const line = rows.plan.lines[segment.lineIndex]?.name ?? "";
  const row = rows.rows[pieceOfSegment(rows, segment.index, rowIndex)?.rowIndex ?? -1];
  return rows.choice === "lines" || row === undefined ? line : `${rowName(row, names)}, ${line}`;
}
