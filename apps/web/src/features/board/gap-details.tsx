import type { Plant } from "@formweek/capacity-model";
import type { JSX } from "react";
import { Facts, type Fact } from "../../components/facts.tsx";
import type { Format } from "../../format/format.ts";
import type { PlanNames } from "../../format/plan-names.ts";
import { useFormat } from "../../format/use-format.ts";
import type { BoardRow, BoardRows, RowPiece } from "../../kernels/board-rows.ts";
import { gapsBetween } from "../../kernels/culling.ts";
import { useText, type Text } from "../../text/text.ts";
import { GapWaits } from "./gap-waits.tsx";
import { LineHours } from "./line-hours.tsx";
import { rowName } from "../../format/row-words.ts";
import { usePlanEdits } from "./use-plan-edits.ts";

interface GapDetailsProps {
  readonly rows: BoardRows;
  readonly gap: { readonly rowIndex: number; readonly start: number; readonly end: number };
  readonly names: PlanNames;
  /** Undefined until the server has told. */
  readonly plant: Plant | undefined;
}

/** Time in which a row has nothing planned: between what, and how much of it is working time. */
export function GapDetails({ rows, gap, names, plant }: GapDetailsProps): JSX.Element | null {
  const text = useText();
  const format = useFormat();
  const { details } = text;
  const { isProvisional } = usePlanEdits();
  const row = rows.rows[gap.rowIndex];
  if (row === undefined) return null;
  const length = gap.end - gap.start;
  const closed = closedWithin(row, gap.start, gap.end);
  const before = row.pieces.findLast((piece) => piece.end <= gap.start);
  const after = row.pieces.find((piece) => piece.start >= gap.end);
  const reasons = row.closures.filter((closure) => closure.start < gap.end && closure.end > gap.start);
  return (
    <>
      <h2>
        {details.gap} · {format.span(length)}
      </h2>
      <p className="details-lead">{rowName(row, names)}</p>
      <Facts
        facts={[
          { name: details.start, value: format.instant(gap.start) },
          { name: details.end, value: format.instant(gap.end) },
          ...(closed === null ? [] : workingFacts(length, closed, text, format)),
          { name: details.before, value: nameOf(rows, before, text) ?? details.nothingBefore },
          { name: details.after, value: nameOf(rows, after, text) ?? details.nothingAfter },
        ]}
      />
      {row.resource.kind === "line" && !isProvisional && (
        <GapWaits plan={rows.plan} gap={{ lineId: row.resource.line.id, ...gap }} names={names} />
      )}
      {reasons.length > 0 && (
        <ul className="reasons">
          {reasons.map((closure) => (
            <li key={closure.start}>
              {closure.reason}:{" "}
              {text.plant.calendar.fromTo(format.instant(closure.start), format.instant(closure.end))}
            </li>
          ))}
        </ul>
      )}
      {row.resource.kind === "line" && plant !== undefined && (
        <LineHours plan={rows.plan} plant={plant} lineId={row.resource.line.id} within={gap} />
      )}
    </>
  );
}

/** Closed seconds of a stretch of a row; null where its working time is not known. */
function closedWithin({ open }: BoardRow, startAt: number, endAt: number): number | null {
  if (open === null) return null;
  return gapsBetween(open, startAt, endAt).reduce((sum, { start, end }) => sum + end - start, 0);
}

function workingFacts(length: number, closed: number, text: Text, format: Format): readonly Fact[] {
  return [
    { name: text.details.openWithin, value: format.span(length - closed) },
    { name: text.details.closedWithin, value: format.span(closed) },
  ];
}

/** Order or change, with its line where the row is not the line's. */
function nameOf({ choice, plan }: BoardRows, piece: RowPiece | undefined, text: Text): string | null {
  if (piece === undefined) return null;
  const { source, lineIndex } = piece.segment;
  const name = source.kind === "change" ? text.details.change : text.details.order(source.orderId);
  const line = plan.lines[lineIndex]?.name;
  return choice === "lines" || line === undefined ? name : `${name}, ${line}`;
}
