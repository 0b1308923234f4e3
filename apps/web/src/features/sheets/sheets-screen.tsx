import { useMemo, type JSX } from "react";
import { useSearchParams } from "wouter";
import type { Plant } from "@formweek/capacity-model";
import type { PlanResponse } from "@formweek/contracts";
import { ToBoard } from "../../components/to-board.tsx";
import { Icon } from "../../components/icon.tsx";
import { EmptyNotice } from "../../components/notice.tsx";
import { planNames } from "../../format/plan-names.ts";
import { boardPlan, secondsOf, type BoardPlan } from "../../kernels/board-plan.ts";
import { lineSheet } from "../../kernels/line-sheet.ts";
import { plantWeeks, type PlantWeek } from "../../kernels/plant-weeks.ts";
import { zoneClock, type ZoneClock } from "../../kernels/zone-clock.ts";
import { nowSeconds } from "../../sync/now.ts";
import { useText } from "../../text/text.ts";
import { PrintSheet } from "./print-sheet.tsx";
import { SheetChoices } from "./sheet-choices.tsx";

interface SheetsScreenProps {
  readonly plan: PlanResponse | null;
  readonly plant: Plant | undefined;
}

/** Sheets of the newest plan for the shop floor, to look at and to print. Line and week live in the address. */
export function SheetsScreen({ plan, plant }: SheetsScreenProps): JSX.Element {
  const text = useText();
  const board = useMemo(() => (plan === null ? null : boardPlan(plan.planId, plan.document)), [plan]);
  if (plan === null || board === null) {
    return (
      <EmptyNotice title={text.board.noPlan}>
        <p>{text.board.noPlanHint}</p>
        <ToBoard />
      </EmptyNotice>
    );
  }
  if (board.segments.length === 0) {
    return (
      <EmptyNotice title={text.board.emptyPlan}>
        <p>{text.board.emptyPlanHint}</p>
        <ToBoard />
      </EmptyNotice>
    );
  }
  return <OpenSheets board={board} madeAt={secondsOf(plan.createdAt)} plant={plant} />;
}

interface OpenSheetsProps {
  readonly board: BoardPlan;
  readonly madeAt: number;
  readonly plant: Plant | undefined;
}

function OpenSheets({ board, madeAt, plant }: OpenSheetsProps): JSX.Element {
  const { sheets } = useText();
  const [address, setAddress] = useSearchParams();
  const clock = useMemo(() => zoneClock(board.document.plant.timeZone), [board]);
  const weeks = useMemo(() => plantWeeks(clock, board), [clock, board]);
  const lineId = address.get("line") ?? "";
  const weekKey = address.get("week") ?? currentWeek(weeks)?.key ?? "";
  const week = weeks.find((known) => known.key === weekKey);
  const choose = (name: "line" | "week", value: string): void =>
    setAddress(
      (before) => {
        const next = new URLSearchParams(before);
        if (value === "") next.delete(name);
        else next.set(name, value);
        return next;
      },
      { replace: true },
    );
  return (
    <div className="page page-sheets">
      <div className="page-head sheets-tools">
        <h1>{sheets.title}</h1>
        <SheetChoices
          lines={board.lines}
          weeks={weeks}
          lineId={lineId}
          weekKey={weekKey}
          onLine={(id) => choose("line", id)}
          onWeek={(key) => choose("week", key)}
        />
        <button type="button" className="button button-main" onClick={() => window.print()}>
          <Icon name="print" /> {sheets.print}
        </button>
        <ToBoard />
        <span className="hint">{sheets.hint}</span>
      </div>
      {week === undefined ? (
        <Unknown title={sheets.unknownWeek(weekKey)} />
      ) : lineId !== "" && board.lines.every((line) => line.id !== lineId) ? (
        <Unknown title={sheets.unknownLine(lineId)} />
      ) : (
        <Sheets board={board} madeAt={madeAt} plant={plant} clock={clock} lineId={lineId} week={week} />
      )}
    </div>
  );
}

/** The week that it is, or the next that the plan has; the last of a plan that is over. */
function currentWeek(weeks: readonly PlantWeek[]): PlantWeek | undefined {
  const now = nowSeconds();
  return weeks.find((week) => week.endAt > now) ?? weeks.at(-1);
}

function Unknown({ title }: { readonly title: string }): JSX.Element {
  const { sheets } = useText();
  return (
    <EmptyNotice isInner title={title}>
      <p>{sheets.unknownHint}</p>
    </EmptyNotice>
  );
}

interface SheetsProps extends OpenSheetsProps {
  readonly clock: ZoneClock;
  /** Empty: every line. */
  readonly lineId: string;
  readonly week: PlantWeek;
}

function Sheets({ board, madeAt, plant, clock, lineId, week }: SheetsProps): JSX.Element {
  const text = useText();
  const names = useMemo(() => planNames(plant, text), [plant, text]);
  const laidOut = useMemo(() => {
    const lines = board.lines.filter((line) => lineId === "" || line.id === lineId);
    return lines.map((line) => lineSheet(clock, line, week));
  }, [board, clock, lineId, week]);
  const filled = laidOut.filter((sheet) => sheet.days.length > 0);
  const empty = laidOut.filter((sheet) => sheet.days.length === 0).map((sheet) => sheet.line.name);
  if (filled.length === 0) {
    return (
      <EmptyNotice
        isInner
        title={
          lineId === ""
            ? text.sheets.nothingAnywhere(week.number)
            : text.sheets.nothingHere(empty.join(", "), week.number)
        }
      >
        <p>{text.sheets.nothingHint}</p>
      </EmptyNotice>
    );
  }
  return (
    <>
      {empty.length > 0 && <p className="hint sheets-tools">{text.sheets.without(empty.join(", "))}</p>}
      {filled.map((sheet) => (
        <PrintSheet key={sheet.line.id} board={board} madeAt={madeAt} names={names} sheet={sheet} />
      ))}
    </>
  );
}
