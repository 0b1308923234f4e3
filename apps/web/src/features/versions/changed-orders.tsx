import type { JSX } from "react";
import { Link } from "wouter";
import { useFormat } from "../../format/use-format.ts";
import type { ChangedOrderRow } from "../../kernels/difference-rows.ts";
import { useText } from "../../text/text.ts";
import { mostRows, shiftWords } from "./shift-words.ts";

/** Orders that finish at another time or changed sides, what got worse first. */
export function ChangedOrders({ rows }: { readonly rows: readonly ChangedOrderRow[] }): JSX.Element {
  const { versions: text } = useText();
  const format = useFormat();
  const instant = (at: number | null): string => (at === null ? text.notInIt : format.instant(at));
  return (
    <section>
      <h3>{text.finishTitle}</h3>
      <div className="scroller" tabIndex={0} role="region" aria-label={text.finishTitle}>
        <table className="table table-small">
          <caption className="unseen">{text.finishCaption}</caption>
          <thead>
            <tr>
              <th scope="col">{text.order}</th>
              <th scope="col">{text.customer}</th>
              <th scope="col">{text.product}</th>
              <th scope="col">{text.due}</th>
              <th scope="col">{text.was}</th>
              <th scope="col">{text.is}</th>
              <th scope="col">{text.finishShift}</th>
              <th scope="col">{text.sideTitle}</th>
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, mostRows).map((row) => (
              <tr key={row.orderId}>
                <th scope="row">
                  <Link href={`/?order=${encodeURIComponent(row.orderId)}`}>{row.orderId}</Link>
                </th>
                <td>{row.customer}</td>
                <td>{row.productName}</td>
                <td>{row.due === null ? "" : format.instant(row.due)}</td>
                <td>{instant(row.from)}</td>
                <td>{instant(row.to)}</td>
                <td>{row.laterBy === null ? "" : shiftWords(row.laterBy, { text, format })}</td>
                <td>
                  <Side row={row} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {rows.length > mostRows && (
        <p className="hint">{text.onlyFirst(format.count(mostRows), format.count(rows.length))}</p>
      )}
    </section>
  );
}

function Side({ row }: { readonly row: ChangedOrderRow }): JSX.Element {
  const { versions: text } = useText();
  const format = useFormat();
  const late = format.span(row.lateSeconds);
  if (row.side === "none" && row.lateSeconds > 0) return <>{text.stillLate(late)}</>;
  const isWorse = row.side === "newly late" || row.side === "left out";
  return (
    <span className={isWorse ? "worse" : row.side === "none" ? "hint" : "better"}>
      {text.sides[row.side](late)}
    </span>
  );
}
