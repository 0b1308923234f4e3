import { useMemo, useRef, useState, type JSX } from "react";
import { SheetBand } from "../../components/sheet-band.tsx";
import { useRowWindow } from "../../components/row-window.ts";
import { SpacerRow } from "../../components/spacer-row.tsx";
import type { Format } from "../../format/format.ts";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import type { BoardRows, RowChoice, RowPiece } from "../../kernels/board-rows.ts";
import type { HeldOrders, PromisedOrders } from "../../kernels/held-order.ts";
import { isSegmentKept, ordersKept } from "../../kernels/plan-filter.ts";
import { rowsOf } from "../../state/board-view.ts";
import { useText, type Text } from "../../text/text.ts";
import type { PlanNames } from "../../format/plan-names.ts";
import { heldWords } from "./held-words.ts";
import { rowName } from "../../format/row-words.ts";
import { useBoard } from "./use-board.ts";

/** The same plan as rows: for screen readers, for reading exact times, and for copying into a spreadsheet. */
export function PlanTable({
  names,
  held,
  promised,
}: {
  readonly names: PlanNames;
  readonly held: HeldOrders;
  readonly promised: PromisedOrders;
}): JSX.Element | null {
  const rows = useBoard(rowsOf);
  return rows === null ? null : <PiecesTable laidOut={rows} names={names} held={held} promised={promised} />;
}

interface PiecesTableProps {
  readonly laidOut: BoardRows;
  readonly names: PlanNames;
  readonly held: HeldOrders;
  readonly promised: PromisedOrders;
}

function PiecesTable({ laidOut, names, held, promised }: PiecesTableProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const filter = useBoard((state) => state.filter);
  const [isCopied, setCopied] = useState(false);
  const scrollRef = useRef<HTMLDivElement>(null);
  const rows = useMemo(() => {
    const { plan } = laidOut;
    const kept = ordersKept(plan, filter);
    return laidOut.rows.flatMap((row) =>
      row.pieces.filter(({ segment }) => isSegmentKept(plan, segment, kept)),
    );
  }, [laidOut, filter]);
  const virtual = useRowWindow(rows.length, scrollRef);
  const words: Words = { laidOut, names, held, promised, text, format };
  const titles = titlesOf(text, laidOut.choice);
  const items = virtual.getVirtualItems();
  const above = items[0]?.start ?? 0;
  const below = virtual.getTotalSize() - (items.at(-1)?.end ?? 0);
  const copy = async (): Promise<void> => {
    const lines = [titles, ...rows.map((piece) => cellsOf(piece, words))];
    await navigator.clipboard.writeText(lines.map((cells) => cells.join("\t")).join("\n"));
    setCopied(true);
  };
  return (
    <section className="plan-table">
      <div className="page-head">
        <span className="hint">{text.table.rows(format.count(rows.length))}</span>
        <button type="button" className="button" onClick={() => void copy()}>
          {text.table.copy}
        </button>
        <span role="status">{isCopied ? text.table.copied : ""}</span>
      </div>
      <div
        className="scroller scroller-fill"
        ref={scrollRef}
        tabIndex={0}
        role="region"
        aria-label={text.table.caption}
      >
        <table className="table table-fixed" aria-rowcount={rows.length + 1}>
          <caption className="unseen">{text.table.caption}</caption>
          <thead>
            <tr aria-rowindex={1}>
              {titles.map((title) => (
                <th key={title} scope="col">
                  {title}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <SpacerRow height={above} />
            {items.map((item) => {
              const piece = rows[item.index];
              return piece === undefined ? null : (
                <PlanRow
                  key={`${piece.rowIndex} ${piece.place}`}
                  place={item.index + 2}
                  piece={piece}
                  words={words}
                />
              );
            })}
            <SpacerRow height={below} />
          </tbody>
        </table>
      </div>
    </section>
  );
}

interface Words {
  readonly laidOut: BoardRows;
  readonly names: PlanNames;
  readonly held: HeldOrders;
  readonly promised: PromisedOrders;
  readonly text: Text;
  readonly format: Format;
}

interface PlanRowProps {
  readonly place: number;
  readonly piece: RowPiece;
  readonly words: Words;
}

function PlanRow({ place, piece, words }: PlanRowProps): JSX.Element {
  const { segment } = piece;
  const cells = cellsOf(piece, words);
  const sheetColumn = words.laidOut.choice === "lines" ? 5 : 6;
  const isLate = segment.source.kind === "run" && segment.source.lateSeconds > 0;
  return (
    <tr aria-rowindex={place} className={isLate ? "late-row" : undefined}>
      {cells.map((cell, at) => {
        if (at === 0) {
          return (
            <th key={at} scope="row">
              {cell}
            </th>
          );
        }
        return (
          <td key={at}>
            {at === sheetColumn && segment.source.kind === "run" ? (
              <SheetBand colour={segment.source.colour} />
            ) : (
              cell
            )}
          </td>
        );
      })}
    </tr>
  );
}

function titlesOf({ table }: Text, choice: RowChoice): readonly string[] {
  const { line, kind, order, customer, what, sheet, pieces, start, end, lasts, held, late } = table;
  const columns = [line, kind, order, customer, what, sheet, pieces, start, end, lasts, held, late];
  return choice === "lines" ? columns : [choice === "moulds" ? table.mould : table.team, ...columns];
}

/** Cells of a piece; where rows are not lines, whose row it is comes first. */
function cellsOf(piece: RowPiece, words: Words): readonly string[] {
  const { laidOut, names } = words;
  const row = laidOut.rows[piece.rowIndex];
  const cells = cellsOnLine(piece, words);
  return laidOut.choice === "lines" || row === undefined ? cells : [rowName(row, names), ...cells];
}

function cellsOnLine(
  { segment, start, end }: RowPiece,
  { laidOut: { plan }, names, held, promised, text, format }: Words,
): readonly string[] {
  const { source } = segment;
  const line = plan.lines[segment.lineIndex]?.name ?? "";
  const times = [format.instant(start), format.instant(end), format.span(end - start)];
  const kind = text.table.kinds[source.kind];
  if (source.kind === "change") {
    const work = `${names.mould(source.mouldOut)} → ${names.mould(source.mouldIn)}`;
    return [line, kind, "", "", work, "", "", ...times, "", ""];
  }
  if (source.kind === "stop")
    return [line, kind, source.orderId, "", text.board.stop[source.reason], "", "", ...times, "", ""];
  const pin = held.get(source.orderId);
  const hold = promised.get(source.orderId);
  const late = source.lateSeconds > 0 ? format.span(source.lateSeconds) : "";
  return [
    line,
    kind,
    source.orderId,
    source.customer,
    source.mouldName,
    source.colour.name,
    format.count(source.pieces),
    ...times,
    [
      ...(pin === undefined ? [] : [heldWords(plan, pin, { text, format })]),
      ...(hold === undefined
        ? []
        : [text.holds.markOf(hold.customer, format.instant(secondsOf(hold.until)))]),
    ].join("; "),
    late,
  ];
}
