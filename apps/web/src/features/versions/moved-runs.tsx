import type { JSX } from "react";
import { Link } from "wouter";
import { useFormat } from "../../format/use-format.ts";
import type { LotPlace, MovedRow } from "../../kernels/difference-rows.ts";
import { useText } from "../../text/text.ts";
import { mostRows, shiftWords } from "./shift-words.ts";

interface MovedRunsProps {
  readonly rows: readonly MovedRow[];
  /** Names by line id. */
  readonly lines: ReadonlyMap<string, string>;
}

/** Runs that moved: where each was, where it is, and by how much. */
export function MovedRuns({ rows, lines }: MovedRunsProps): JSX.Element {
  const { versions: text } = useText();
  const format = useFormat();
  const place = (at: LotPlace | null): string =>
    at === null
      ? text.notInIt
      : text.place(lines.get(at.lineId) ?? at.lineId, format.instant(at.start), format.instant(at.end));
  return (
    <section>
      <h3>{text.movedTitle}</h3>
      <div className="scroller" tabIndex={0} role="region" aria-label={text.movedTitle}>
        <table className="table table-small">
          <caption className="unseen">{text.movedCaption}</caption>
          <thead>
            <tr>
              <th scope="col">{text.order}</th>
              <th scope="col">{text.customer}</th>
              <th scope="col">{text.product}</th>
              <th scope="col">{text.was}</th>
              <th scope="col">{text.is}</th>
              <th scope="col">{text.shift}</th>
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, mostRows).map((row) => (
              <tr key={`${row.orderId} ${row.lot}`}>
                <th scope="row">
                  <Link href={`/?order=${encodeURIComponent(row.orderId)}`}>
                    {row.lot === 0 ? row.orderId : text.lot(row.orderId, format.count(row.lot + 1))}
                  </Link>
                </th>
                <td>{row.customer}</td>
                <td>{row.productName}</td>
                <td>{place(row.from)}</td>
                <td className={row.changesLine ? "other-line" : undefined}>{place(row.to)}</td>
                <td>
                  <Shift row={row} />
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

function Shift({ row }: { readonly row: MovedRow }): JSX.Element {
  const { versions: text } = useText();
  const format = useFormat();
  const { from, to, laterBy } = row;
  if (from === null || to === null || laterBy === null) return <></>;
  const isResized = from.pieces !== to.pieces;
  return (
    <>
      {shiftWords(laterBy, { text, format })}
      {isResized && <small> {text.otherPieces(format.count(from.pieces), format.count(to.pieces))}</small>}
    </>
  );
}
