import type { PromisePrice } from "@formweek/contracts";
import type { JSX } from "react";
import { useFormat } from "../../format/use-format.ts";
import { useText } from "../../text/text.ts";

/** Less than this is told as nothing, in the plant's currency and in minutes. */
const least = 0.5;

/** What an offer costs the plant: money, minutes of change-over and overtime, and item by item. */
export function OfferPrice({ price }: { readonly price: PromisePrice }): JSX.Element {
  const { promise, summary } = useText();
  const format = useFormat();
  const { cost, changeMinutes, overtimeMinutes, terms } = price;
  const money =
    Math.abs(cost) < least
      ? promise.free
      : cost > 0
        ? promise.more(format.money(cost))
        : promise.less(format.money(-cost));
  const change = format.span(changeMinutes * 60);
  return (
    <div className="offer-price">
      <p>
        {promise.price}: <strong>{money}</strong>
        {Math.abs(changeMinutes) >= least && (
          <>; {changeMinutes > 0 ? promise.changeMore(change) : promise.changeLess(change)}</>
        )}
        {overtimeMinutes >= least && <>; {promise.overtime(format.span(overtimeMinutes * 60))}</>}
      </p>
      {terms.length > 0 && (
        <details>
          <summary>{promise.priceDetails}</summary>
          <table className="table table-small">
            <thead className="unseen">
              <tr>
                <th scope="col">{summary.term}</th>
                <th scope="col">{summary.amount}</th>
                <th scope="col">{summary.total}</th>
              </tr>
            </thead>
            <tbody>
              {terms.map(({ name, unit, amount, cost: own }) => (
                <tr key={name}>
                  <th scope="row">{summary.terms[name] ?? name}</th>
                  <td className="number">
                    {format.decimal(amount, 1)} {summary.termUnits[unit] ?? unit}
                  </td>
                  <td className="number">{format.money(own)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      )}
    </div>
  );
}
