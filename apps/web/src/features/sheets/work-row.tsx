import type { JSX } from "react";
import type { ChangeSegment } from "@formweek/contracts";
import type { Format } from "../../format/format.ts";
import type { PlanNames } from "../../format/plan-names.ts";
import { useFormat } from "../../format/use-format.ts";
import type { SheetRow, SheetWork } from "../../kernels/line-sheet.ts";
import { useText, type Text } from "../../text/text.ts";
import { OverBorder, startText, untilText } from "./sheet-times.tsx";

type OtherWork = Exclude<SheetWork, { kind: "run" }>;
type Change = Extract<SheetWork, { kind: "change" }>;

interface WorkRowProps {
  readonly names: PlanNames;
  readonly row: SheetRow;
  /** Start of the day that the row stands under. */
  readonly dayAt: number;
  readonly work: OtherWork;
  /** Columns of the table. */
  readonly columns: number;
}

/** A change, a stop or a closure: what is to be done stands over the columns of a run. */
export function WorkRow({ names, row, dayAt, work, columns }: WorkRowProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const [title, ...details] = wordsOf(work, format.span(row.end - row.start), { names, text, format });
  return (
    <tr className={work.kind === "change" ? "sheet-change" : "sheet-stop"}>
      <td className="sheet-time">{startText(row, dayAt, format)}</td>
      <th scope="row" colSpan={columns - 3} className="sheet-name">
        {title}
        {details.length > 0 && <small>{details.join(" · ")}</small>}
        {work.kind === "change" && work.change.tasks.length > 0 && (
          <small>{taskWords(work.change, { names, text, format }).join(" · ")}</small>
        )}
        <OverBorder row={row} />
      </th>
      <td colSpan={2} className="sheet-time">
        {untilText(row, format)}
      </td>
    </tr>
  );
}

interface Words {
  readonly names: PlanNames;
  readonly text: Text;
  readonly format: Format;
}

/** The title, then what else is to be known. */
function wordsOf(work: OtherWork, span: string, words: Words): readonly string[] {
  const { text } = words;
  switch (work.kind) {
    case "change":
      return changeWords(work, span, words);
    case "stop":
      return [
        text.sheets.stop(text.board.stop[work.stop.reason], span),
        text.sheets.stopOf(work.stop.orderId),
      ];
    case "closure":
      return [text.sheets.closure(work.reason, span)];
  }
}

function changeWords({ change, sheetOut, sheetIn }: Change, span: string, words: Words): readonly string[] {
  const { names, text, format } = words;
  const { sheets } = text;
  const work = format.span(change.minutes * 60);
  return [
    change.stripping ? sheets.stripping(span) : sheets.change(span),
    ...(work === span ? [] : [sheets.work(work)]),
    ...mouldWords(change, words),
    ...(sheetOut === null || sheetIn === null
      ? []
      : [sheets.sheetChange(sheetOut.sheetName, sheetIn.sheetName)]),
    change.teamId === null ? sheets.noSetters : sheets.setters(names.team(change.teamId)),
    ...(change.trolleyId === null ? [] : [sheets.trolley(names.trolley(change.trolleyId))]),
  ];
}

/** What is to be done, each with its minutes; who does it where both setters and line have a part. */
function taskWords({ tasks }: ChangeSegment, { text: { sheets, causes }, format }: Words): readonly string[] {
  const isShared = tasks.some((task) => task.byTeam) && tasks.some((task) => !task.byTeam);
  return tasks.map((task) => {
    const lasts = format.span(task.minutes * 60);
    const name = causes.task(task);
    if (!isShared) return sheets.task(name, lasts);
    return task.byTeam ? sheets.setterTask(name, lasts) : sheets.lineTask(name, lasts);
  });
}

function mouldWords({ mouldOut, mouldIn }: ChangeSegment, { names, text }: Words): readonly string[] {
  const isSame = mouldOut?.mouldId === mouldIn?.mouldId && mouldOut?.copy === mouldIn?.copy;
  if (isSame) return [text.sheets.mouldStays];
  return [
    ...(mouldOut === null ? [] : [text.sheets.dismount(names.mould(mouldOut))]),
    ...(mouldIn === null ? [] : [text.sheets.mount(names.mould(mouldIn))]),
  ];
}
