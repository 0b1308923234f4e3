import { Fragment, type JSX } from "react";
import { Cautions } from "../../components/cautions.tsx";
import { useFormat } from "../../format/use-format.ts";
import type { PlanNames } from "../../format/plan-names.ts";
import type { BoardPlan } from "../../kernels/board-plan.ts";
import type { LineSheet } from "../../kernels/line-sheet.ts";
import { lastDayOf } from "../../kernels/plant-weeks.ts";
import { useText } from "../../text/text.ts";
import { RunRow } from "./run-row.tsx";
import { WorkRow } from "./work-row.tsx";

interface PrintSheetProps {
  readonly board: BoardPlan;
  readonly madeAt: number;
  readonly names: PlanNames;
  readonly sheet: LineSheet;
}

/** One line in one week: the head on screen stands above the table, on paper in it, where every page repeats it. */
export function PrintSheet({ board, madeAt, names, sheet }: PrintSheetProps): JSX.Element {
  const { sheets } = useText();
  const format = useFormat();
  const titles = [
    sheets.start,
    sheets.order,
    sheets.product,
    sheets.mould,
    sheets.sheet,
    sheets.pieces,
    sheets.end,
    sheets.due,
  ];
  const head = <SheetHead board={board} madeAt={madeAt} sheet={sheet} />;
  const caption = sheets.tableOf(sheet.line.name, sheet.week.number);
  return (
    <article className="print-sheet" aria-label={caption}>
      <div className="on-screen">{head}</div>
      <div className="scroller" tabIndex={0} role="region" aria-label={caption}>
        <table className="table sheet-table">
          <thead>
            <tr className="on-paper">
              <td colSpan={titles.length}>{head}</td>
            </tr>
            <tr>
              {titles.map((title) => (
                <th key={title} scope="col" className={title === sheets.pieces ? "number" : undefined}>
                  {title}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {sheet.days.map((day) => (
              <Fragment key={day.at}>
                <tr className="sheet-day">
                  <th scope="rowgroup" colSpan={titles.length}>
                    {format.longDay(day.at)}
                  </th>
                </tr>
                {day.rows.map((row) =>
                  row.work.kind === "run" ? (
                    <RunRow
                      key={row.key}
                      board={board}
                      names={names}
                      row={row}
                      dayAt={day.at}
                      work={row.work}
                    />
                  ) : (
                    <WorkRow
                      key={row.key}
                      names={names}
                      row={row}
                      dayAt={day.at}
                      work={row.work}
                      columns={titles.length}
                    />
                  ),
                )}
              </Fragment>
            ))}
          </tbody>
        </table>
      </div>
      <Cautions />
    </article>
  );
}

function SheetHead({ board, madeAt, sheet }: Omit<PrintSheetProps, "names">): JSX.Element {
  const { sheets } = useText();
  const format = useFormat();
  const { plant } = board.document;
  const { number, year, startAt } = sheet.week;
  return (
    <div className="sheet-head">
      <h2>
        {sheet.line.name} · {plant.name}
      </h2>
      <p>{sheets.weekOfYear(number, year, format.day(startAt), format.day(lastDayOf(sheet.week)))}</p>
      <p className="hint">
        {sheets.planMade(format.instant(madeAt))} · {sheets.times(plant.timeZone)} · {sheets.toCautions}
      </p>
    </div>
  );
}
