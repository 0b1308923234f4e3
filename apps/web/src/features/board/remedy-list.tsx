import type { PlanFigures, Remedy, RemedyChange, RemedyFindings } from "@formweek/contracts";
import type { JSX } from "react";
import { Link } from "wouter";
import type { Format } from "../../format/format.ts";
import type { PlanNames } from "../../format/plan-names.ts";
import { useFormat } from "../../format/use-format.ts";
import type { BoardPlan } from "../../kernels/board-plan.ts";
import { useText, type Text } from "../../text/text.ts";
import { ChangeOrder, isOfOrder } from "./change-order.tsx";
import { remedyWords } from "./remedy-words.ts";
import { usePlanEdits } from "./use-plan-edits.ts";

interface RemedyListProps {
  readonly runId: string;
  readonly findings: RemedyFindings;
  readonly plan: BoardPlan;
  readonly names: PlanNames;
}

/** Each remedy with what it comes to, and a way to have it done. */
export function RemedyList({ runId, findings, plan, names }: RemedyListProps): JSX.Element | null {
  const text = useText();
  const format = useFormat();
  const { remedies } = findings;
  if (remedies.length === 0) return null;
  return (
    <>
      <ol className="remedy-list">
        {remedies.map((remedy, place) => {
          const words = remedyWords(remedy.action, { plan, names, text, format });
          return (
            <li key={words}>
              <h4>{words}</h4>
              <Effect findings={findings} remedy={remedy} />
              <Doing
                plantId={plan.document.plant.id}
                runId={runId}
                place={place}
                remedy={remedy}
                words={words}
              />
            </li>
          );
        })}
      </ol>
      <p className="hint">{text.remedies.priceNote}</p>
    </>
  );
}

interface Row {
  readonly name: string;
  readonly before: string;
  readonly after: string;
  /** Less than before, more, or the same. */
  readonly tone: "better" | "worse" | "same";
}

function Effect({
  findings,
  remedy,
}: {
  readonly findings: RemedyFindings;
  readonly remedy: Remedy;
}): JSX.Element {
  const { remedies: text } = useText();
  const format = useFormat();
  return (
    <table className="table table-small remedy-effect">
      <thead className="unseen">
        <tr>
          <th scope="col">{text.figure}</th>
          <th scope="col">{text.before}</th>
          <th scope="col">{text.after}</th>
        </tr>
      </thead>
      <tbody>
        {effectRows(findings, remedy, { text, format }).map(({ name, before, after, tone }) => (
          <tr key={name} data-tone={tone}>
            <th scope="row">{name}</th>
            <td className="number">{before}</td>
            <td className="number">{after}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function effectRows(
  { before, orderLateSeconds }: RemedyFindings,
  { after, orderLateSeconds: then }: Remedy,
  { text, format }: { readonly text: Text["remedies"]; readonly format: Format },
): readonly Row[] {
  const late = (seconds: number | null): string =>
    seconds === null ? text.leftOut : seconds === 0 ? text.onTime : format.span(seconds);
  const row = (name: string, key: keyof PlanFigures, write: (value: number) => string): Row => ({
    name,
    before: write(before[key]),
    after: write(after[key]),
    tone: toneOf(before[key], after[key]),
  });
  const rows: readonly Row[] = [
    {
      name: text.thisOrder,
      before: late(orderLateSeconds),
      after: late(then),
      tone: toneOf(orderLateSeconds ?? Infinity, then ?? Infinity),
    },
    row(text.lateOrders, "lateOrders", format.count),
    row(text.lateness, "lateSeconds", format.hours),
    row(text.notPlanned, "unplannedOrders", format.count),
    row(text.changes, "changeSeconds", format.hours),
    row(text.overtime, "overtimeSeconds", format.hours),
    row(text.cost, "cost", format.money),
  ];
  // what is nothing before and after is not worth a row
  return rows.filter(({ name, tone }) => tone !== "same" || name === text.thisOrder || name === text.cost);
}

function toneOf(before: number, after: number): Row["tone"] {
  return after === before ? "same" : after < before ? "better" : "worse";
}

interface DoingProps {
  readonly plantId: string;
  readonly runId: string;
  readonly place: number;
  readonly remedy: Remedy;
  readonly words: string;
}

function Doing({ plantId, runId, place, remedy: { action }, words }: DoingProps): JSX.Element {
  const { remedies: text } = useText();
  const { take, isReady } = usePlanEdits();
  if (action.kind === "change") return <PeoplesTask plantId={plantId} change={action.change} />;
  const step = action.kind === "edit" ? action.edit : ({ kind: "found plan", runId, place } as const);
  return (
    <>
      {action.kind === "hours" && <p className="hint">{text.shiftNote}</p>}
      <button
        type="button"
        className="button"
        disabled={!isReady}
        aria-label={text.applyWhat(words)}
        onClick={() => take(step)}
      >
        {text.apply}
      </button>
    </>
  );
}

/** Where in the app the records are that people change, by the kind of change. */
const PLACES = {
  "extra shift": ["/plant/calendars", "toCalendars"],
  "extra team": ["/plant/crews", "toCrews"],
  "extra operators": ["/plant/crews", "toCrews"],
  "mould copy": ["/plant/moulds", "toMoulds"],
  "another line": ["/plant/moulds", "toMoulds"],
  lots: ["/orders", "toOrders"],
  "earlier start": ["/orders", "toOrders"],
  "later due": ["/orders", "toOrders"],
  "earlier sheet": ["/plant/sheets", "toSheets"],
} as const satisfies Record<RemedyChange["kind"], readonly [string, keyof Text["remedies"]]>;

const isShift = ({ kind }: RemedyChange): boolean =>
  kind === "extra shift" || kind === "extra team" || kind === "extra operators";

interface PeoplesTaskProps {
  readonly plantId: string;
  readonly change: RemedyChange;
}

function PeoplesTask({ plantId, change }: PeoplesTaskProps): JSX.Element {
  const { remedies: text } = useText();
  const [href, name] = PLACES[change.kind];
  return (
    <div className="remedy-people">
      <p className="hint">
        <strong>{text.byPeople}.</strong> {text.who[change.kind]} {isShift(change) && text.shiftNote}
      </p>
      {isOfOrder(change) && <ChangeOrder plantId={plantId} change={change} />}
      <Link href={href} className="button">
        {text[name]}
      </Link>
    </div>
  );
}
