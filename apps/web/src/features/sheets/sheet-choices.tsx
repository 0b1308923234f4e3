import type { JSX } from "react";
import { useFormat } from "../../format/use-format.ts";
import type { BoardLine } from "../../kernels/board-plan.ts";
import { lastDayOf, type PlantWeek } from "../../kernels/plant-weeks.ts";
import { useText } from "../../text/text.ts";

interface SheetChoicesProps {
  readonly lines: readonly BoardLine[];
  readonly weeks: readonly PlantWeek[];
  /** Empty: every line. */
  readonly lineId: string;
  readonly weekKey: string;
  readonly onLine: (lineId: string) => void;
  readonly onWeek: (weekKey: string) => void;
}

/** Which line and which week are shown. What the address asks for but the plan has not stands in the list as it came. */
export function SheetChoices({
  lines,
  weeks,
  lineId,
  weekKey,
  onLine,
  onWeek,
}: SheetChoicesProps): JSX.Element {
  const { sheets } = useText();
  const format = useFormat();
  const isLineKnown = lineId === "" || lines.some((line) => line.id === lineId);
  const isWeekKnown = weeks.some((week) => week.key === weekKey);
  return (
    <>
      <select
        className="select"
        aria-label={sheets.line}
        value={lineId}
        onChange={(event) => onLine(event.target.value)}
      >
        <option value="">{sheets.allLines}</option>
        {!isLineKnown && <option value={lineId}>{lineId}</option>}
        {lines.map((line) => (
          <option key={line.id} value={line.id}>
            {line.name}
          </option>
        ))}
      </select>
      <select
        className="select"
        aria-label={sheets.week}
        value={weekKey}
        onChange={(event) => onWeek(event.target.value)}
      >
        {!isWeekKnown && <option value={weekKey}>{weekKey}</option>}
        {weeks.map((week) => (
          <option key={week.key} value={week.key}>
            {sheets.weekOf(week.number, format.day(week.startAt), format.day(lastDayOf(week)))}
          </option>
        ))}
      </select>
    </>
  );
}
