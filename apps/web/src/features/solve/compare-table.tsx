import type { PlanSummary, TradeOffFindings } from "@formweek/contracts";
import type { JSX } from "react";
import { useFormat } from "../../format/use-format.ts";
import { useText } from "../../text/text.ts";

interface CompareTableProps {
  readonly findings: TradeOffFindings;
  readonly standing: PlanSummary | null;
  readonly pointed: number | null;
  readonly onPoint: (place: number | null) => void;
  readonly onChoose: (place: number) => void;
}

const hour = 3600;

/** The plans in figures, the one on the board first. */
export function CompareTable({
  findings,
  standing,
  pointed,
  onPoint,
  onChoose,
}: CompareTableProps): JSX.Element {
  const { compare: text, remedies } = useText();
  const format = useFormat();
  const isSomeOvertime = findings.plans.some(({ figures }) => figures.overtimeSeconds > 0);
  const isSomeLeftOut = findings.plans.some(({ figures }) => figures.unplannedOrders > 0);
  return (
    <div className="compare-table">
      <table className="table table-small">
        <thead>
          <tr>
            <th scope="col">{text.plan}</th>
            <th scope="col" className="number">
              {text.late}
            </th>
            <th scope="col" className="number">
              {text.lateness}
            </th>
            {isSomeLeftOut && (
              <th scope="col" className="number">
                {remedies.notPlanned}
              </th>
            )}
            <th scope="col" className="number">
              {text.changes}
            </th>
            {isSomeOvertime && (
              <th scope="col" className="number">
                {text.overtime}
              </th>
            )}
            <th scope="col">{text.best}</th>
            <th scope="col">
              <span className="unseen">{text.choose}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {standing !== null && (
            <tr>
              <th scope="row">{text.standing}</th>
              <td className="number">{format.count(standing.late)}</td>
              <td className="number">{format.hours(standing.tardinessHours * hour)}</td>
              {isSomeLeftOut && <td className="number">{format.count(standing.unplanned)}</td>}
              <td className="number">{format.hours(standing.changeHours * hour)}</td>
              {isSomeOvertime && <td />}
              <td />
              <td />
            </tr>
          )}
          {findings.plans.map(({ figures, leastIn }, place) => (
            <tr
              key={place}
              className={place === pointed ? "row-pointed" : undefined}
              onPointerEnter={() => onPoint(place)}
              onPointerLeave={() => onPoint(null)}
            >
              <th scope="row">{text.planNumber(place + 1)}</th>
              <td className="number">{format.count(figures.lateOrders)}</td>
              <td className="number">{format.hours(figures.lateSeconds)}</td>
              {isSomeLeftOut && <td className="number">{format.count(figures.unplannedOrders)}</td>}
              <td className="number">{format.hours(figures.changeSeconds)}</td>
              {isSomeOvertime && <td className="number">{format.hours(figures.overtimeSeconds)}</td>}
              <td>{leastIn.map((name) => text.criteria[name]).join(", ")}</td>
              <td>
                <button
                  type="button"
                  className="button"
                  aria-label={text.chooseWhich(place + 1)}
                  onFocus={() => onPoint(place)}
                  onBlur={() => onPoint(null)}
                  onClick={() => onChoose(place)}
                >
                  {text.choose}
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
