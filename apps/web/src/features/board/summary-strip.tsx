import type { JSX, ReactNode } from "react";
import { Link } from "wouter";
import type { PlanDocument } from "@formweek/contracts";
import { Disclosure } from "../../components/disclosure.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useText } from "../../text/text.ts";

/** A wider gap to the proven bound says nothing about the plan; the bound then stands with the cost only. */
const tellingGap = 0.5;

interface SummaryStripProps {
  readonly document: PlanDocument;
  /** Orders of the book that this plan does not know. */
  readonly newOrders: number;
  /** Orders, plant or held orders are others than this plan was made from. */
  readonly hasOtherInputs: boolean;
}

/** The plan in one row of figures. */
export function SummaryStrip({ document, newOrders, hasOtherInputs }: SummaryStripProps): JSX.Element {
  const { summary: text } = useText();
  const format = useFormat();
  const { summary, bound, objective } = document;
  const isLate = summary.late > 0;
  return (
    <section className="summary" aria-label={text.title}>
      <Figure
        value={format.count(summary.onTime)}
        aside={text.of(format.count(summary.orders))}
        label={text.onTime}
      />
      <Figure
        value={isLate ? format.hours(summary.tardinessHours * 3600) : "0"}
        label={isLate ? text.worst(format.hours(summary.worstLateHours * 3600)) : text.noneLate}
        isLate={isLate}
      />
      <Figure
        value={format.hours(summary.changeHours * 3600)}
        label={text.changes(format.count(summary.changes))}
      />
      <Figure value={format.percent(summary.utilisation)} label={text.used} />
      {summary.unplanned > 0 && (
        <Figure
          value={<Link href="/orders?state=unplanned">{format.count(summary.unplanned)}</Link>}
          label={text.unplanned}
          isLate
        />
      )}
      {summary.coveredByStock > 0 && (
        <Figure value={format.count(summary.coveredByStock)} label={text.fromStock} />
      )}
      {newOrders > 0 && (
        <Figure
          value={<Link href="/orders?state=not+planned+yet">{format.count(newOrders)}</Link>}
          label={text.newOrders}
        />
      )}
      {hasOtherInputs && newOrders === 0 && (
        <Figure value={<Link href="/orders">{text.inputs}</Link>} label={text.inputsChanged} />
      )}
      {bound !== null && bound.gap < tellingGap && (
        <Figure value={text.atMost(format.percent(bound.gap))} label={text.gap} />
      )}
      <Disclosure
        buttonClass="cost"
        label={<Figure value={format.money(objective.total)} label={text.cost} />}
      >
        <h2>{text.costTitle}</h2>
        <table className="table">
          <thead>
            <tr>
              <th scope="col">{text.term}</th>
              <th scope="col" className="number">
                {text.amount}
              </th>
              <th scope="col" className="number">
                {text.total}
              </th>
            </tr>
          </thead>
          <tbody>
            {objective.terms.map((term) => (
              <tr key={term.name}>
                <th scope="row">{text.terms[term.name] ?? term.name}</th>
                <td className="number">
                  {format.decimal(term.amount, 1)} {text.termUnits[term.unit] ?? term.unit}
                </td>
                <td className="number">{format.money(term.cost)}</td>
              </tr>
            ))}
          </tbody>
        </table>
        {bound !== null && <p className="hint">{text.bound(format.money(bound.total))}</p>}
        {bound !== null && bound.parts !== null && bound.parts.changeMinutes > 0 && (
          <p className="hint">{text.leastChanges(format.hours(bound.parts.changeMinutes * 60))}</p>
        )}
      </Disclosure>
    </section>
  );
}

interface FigureProps {
  readonly value: ReactNode;
  readonly label: string;
  readonly aside?: string;
  readonly isLate?: boolean;
}

function Figure({ value, label, aside, isLate = false }: FigureProps): JSX.Element {
  return (
    <span className={isLate ? "figure figure-late" : "figure"}>
      <strong>
        {value}
        {aside === undefined ? null : <small> {aside}</small>}
      </strong>
      <span>{label}</span>
    </span>
  );
}
