import { useState, type JSX } from "react";
import { Link } from "wouter";
import type { BookedOrder } from "@formweek/contracts";
import { Facts, type Fact } from "../../components/facts.tsx";
import { Icon } from "../../components/icon.tsx";
import type { Format } from "../../format/format.ts";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { termsOf } from "../../kernels/order-terms.ts";
import { useText, type Text } from "../../text/text.ts";
import { OrderForm } from "./order-form.tsx";
import { StateBadge } from "./state-badge.tsx";
import { useBookWork } from "./use-book-edits.ts";

interface OrderPanelProps {
  readonly order: BookedOrder;
  readonly product: string;
  /** Products of the plant: id and name. */
  readonly products: readonly (readonly [id: string, name: string])[];
  readonly onClose: () => void;
}

/** One order in full: its terms, what the plan makes of it, and why when it is not planned. */
export function OrderPanel({ order, product, products, onClose }: OrderPanelProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const { change, isBusy } = useBookWork();
  const [isEditing, setEditing] = useState(false);
  const naming = useNaming();
  return (
    <aside className="details" aria-label={text.details.order(order.id)}>
      <button
        type="button"
        className="button button-icon details-close"
        aria-label={text.orders.close}
        onClick={onClose}
      >
        <Icon name="close" />
      </button>
      <h2>{text.details.order(order.id)}</h2>
      <p className="details-lead">
        {product}
        <br />
        {order.customer}
      </p>
      <p>
        <StateBadge state={order.state} />
      </p>
      {order.reasons.length > 0 && (
        <>
          <h3>{text.details.reasons}</h3>
          <ul className="reasons">
            {order.reasons.map((reason) => (
              <li key={`${reason.code} ${reason.lineId ?? ""} ${reason.text}`}>
                {text.causes.unplanned(reason, naming)}
              </li>
            ))}
          </ul>
        </>
      )}
      {isEditing ? (
        <OrderForm order={order} products={products} onClose={() => setEditing(false)} />
      ) : (
        <>
          <Facts facts={factsOf(order, text, format)} />
          <div className="tool-group">
            <button type="button" className="button" onClick={() => setEditing(true)}>
              {text.book.edit}
            </button>
            <button
              type="button"
              className="button"
              disabled={isBusy}
              onClick={() => change([{ before: termsOf(order), after: null }])}
            >
              {text.book.remove}
            </button>
            {order.finish !== null && order.state !== "covered by stock" && (
              <Link href={`/?order=${encodeURIComponent(order.id)}`} className="button">
                {text.orders.onBoard}
              </Link>
            )}
          </div>
        </>
      )}
    </aside>
  );
}

function factsOf(order: BookedOrder, { orders: text }: Text, format: Format): readonly Fact[] {
  const facts: Fact[] = [
    { name: text.due, value: format.instant(secondsOf(order.dueAt)) },
    { name: text.pieces, value: format.count(order.pieces) },
    { name: text.kind, value: text[order.kind] },
    { name: text.weight, value: format.decimal(order.weight, order.weight % 1 === 0 ? 0 : 1) },
    {
      name: text.tolerance,
      value: text.toleranceText(format.percent(order.underTolerance), format.percent(order.overTolerance)),
    },
    { name: text.parts, value: order.partsAllowed ? text.yes : text.no },
  ];
  if (order.earliestStartAt !== null)
    facts.push({ name: text.earliest, value: format.instant(secondsOf(order.earliestStartAt)) });
  if (order.fromStockPieces !== null)
    facts.push({ name: text.fromStock, value: format.count(order.fromStockPieces) });
  if (order.toMakePieces !== null) facts.push({ name: text.toMake, value: format.count(order.toMakePieces) });
  if (order.finish !== null)
    facts.push({ name: text.finish, value: format.instant(secondsOf(order.finish)) });
  if (order.slackSeconds !== null) {
    const isLate = order.slackSeconds < 0;
    const span = format.span(order.slackSeconds);
    facts.push({
      name: text.slack,
      value: isLate ? text.lateBy(span) : span,
      ...(isLate ? ({ tone: "late" } as const) : {}),
    });
  }
  return facts;
}
