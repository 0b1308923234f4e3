import type { JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { SheetBand } from "../../components/sheet-band.tsx";
import { useFormat } from "../../format/use-format.ts";
import type { PlanNames } from "../../format/plan-names.ts";
import { secondsOf, type BoardPlan } from "../../kernels/board-plan.ts";
import type { SheetRow, SheetWork } from "../../kernels/line-sheet.ts";
import { useText } from "../../text/text.ts";
import { OverBorder, startText, untilText } from "./sheet-times.tsx";

interface RunRowProps {
  readonly board: BoardPlan;
  readonly names: PlanNames;
  readonly row: SheetRow;
  /** Start of the day that the row stands under. */
  readonly dayAt: number;
  readonly work: Extract<SheetWork, { kind: "run" }>;
}

export function RunRow({ board, names, row, dayAt, work }: RunRowProps): JSX.Element {
  const { sheets } = useText();
  const format = useFormat();
  const { run, isCut } = work;
  const lots = board.document.lots.filter((lot) => lot.orderId === run.orderId).length;
  return (
    <tr className="sheet-run">
      <td className="sheet-time">{startText(row, dayAt, format)}</td>
      <th scope="row" className="sheet-name">
        {run.orderId}
        {lots > 1 && <small>{sheets.ofLot(run.lot + 1, lots)}</small>}
        <small>{run.customer}</small>
      </th>
      <td className="sheet-name">
        {run.productName}
        <OverBorder row={row} />
      </td>
      <td className="sheet-name">{run.mould === null ? run.mouldName : names.mould(run.mould)}</td>
      <td className="sheet-name">
        {run.sheetName}
        <small>
          <SheetBand colour={run.colour} />
        </small>
      </td>
      <td className="number">
        {format.count(run.pieces)}
        {isCut && <small>{sheets.wholeRun}</small>}
      </td>
      <td className="sheet-time">{untilText(row, format)}</td>
      <td className="sheet-time">
        {format.instant(secondsOf(run.due))}
        <DueMark board={board} orderId={run.orderId} lateSeconds={run.lateSeconds} />
      </td>
    </tr>
  );
}

interface DueMarkProps {
  readonly board: BoardPlan;
  readonly orderId: string;
  readonly lateSeconds: number;
}

function DueMark({ board, orderId, lateSeconds }: DueMarkProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  if (lateSeconds > 0) {
    return (
      <strong className="sheet-late">
        <Icon name="flag" /> {text.board.late(format.span(lateSeconds))}
      </strong>
    );
  }
  return <small>{text.states[board.orders.get(orderId)?.state ?? "on time"]}</small>;
}
