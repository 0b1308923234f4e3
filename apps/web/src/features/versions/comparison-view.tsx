import { useMemo, type JSX } from "react";
import type { PlanComparison, PlanDocument } from "@formweek/contracts";
import { ComparisonWords } from "../../components/comparison-words.tsx";
import { Difference, PlanFigures } from "../../components/plan-figures.tsx";
import { useFormat } from "../../format/use-format.ts";
import { changedOrderRows, movedRows, termRows } from "../../kernels/difference-rows.ts";
import { differencePicture } from "../../kernels/difference-picture.ts";
import { useText } from "../../text/text.ts";
import { ChangedOrders } from "./changed-orders.tsx";
import { DifferencePicture } from "./difference-picture.tsx";
import { MovedRuns } from "./moved-runs.tsx";

interface ComparisonViewProps {
  readonly comparison: PlanComparison;
  readonly from: PlanDocument;
  readonly to: PlanDocument;
}

/** Everything that is different between two plans: figures, cost, a picture of the lines that differ, and both as tables. */
export function ComparisonView({ comparison, from, to }: ComparisonViewProps): JSX.Element {
  const { versions: text } = useText();
  const moved = useMemo(() => movedRows({ comparison, from, to }), [comparison, from, to]);
  const changed = useMemo(() => changedOrderRows({ comparison, from, to }), [comparison, from, to]);
  const picture = useMemo(() => differencePicture(from, to, moved), [from, to, moved]);
  const lines = useMemo(
    () => new Map([...from.lines, ...to.lines].map(({ id, name }) => [id, name])),
    [from, to],
  );
  return (
    <div className="comparison">
      <ComparisonWords comparison={comparison} />
      <div className="comparison-tables">
        <div className="scroller" tabIndex={0} role="region" aria-label={text.figures}>
          <PlanFigures before={comparison.from} after={comparison.to} />
        </div>
        <CostTerms comparison={comparison} />
      </div>
      {picture !== null && <DifferencePicture picture={picture} timeZone={to.plant.timeZone} />}
      {moved.length > 0 && <MovedRuns rows={moved} lines={lines} />}
      {changed.length > 0 && <ChangedOrders rows={changed} />}
    </div>
  );
}

function CostTerms({ comparison }: { readonly comparison: PlanComparison }): JSX.Element {
  const { versions: text, summary } = useText();
  const format = useFormat();
  const { from, to } = comparison;
  const rows = [
    ...termRows(comparison).map(({ name, ...costs }) => ({ name: summary.terms[name] ?? name, ...costs })),
    { name: text.totalCost, from: from.objective.total, to: to.objective.total },
  ];
  return (
    <div className="scroller" tabIndex={0} role="region" aria-label={text.costTitle}>
      <table className="table table-small cost-terms">
        <caption className="unseen">{text.costTitle}</caption>
        <thead>
          <tr>
            <th scope="col">{text.costTitle}</th>
            <th scope="col" className="number">
              {text.before}
            </th>
            <th scope="col" className="number">
              {text.after}
            </th>
            <th scope="col" className="number">
              {text.difference}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.name}>
              <th scope="row">{row.name}</th>
              <td className="number">{format.money(row.from)}</td>
              <td className="number">{format.money(row.to)}</td>
              <Difference
                same={format.money(row.from) === format.money(row.to)}
                by={row.to - row.from}
                say={format.money}
              />
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
