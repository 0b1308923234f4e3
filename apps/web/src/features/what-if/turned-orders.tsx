import type { TurnedOrder } from "@formweek/contracts";
import type { JSX } from "react";
import { Link } from "wouter";
import type { Format } from "../../format/format.ts";
import { useFormat } from "../../format/use-format.ts";
import { turnOf } from "../../kernels/scenario-rows.ts";
import { useText, type Text } from "../../text/text.ts";
import type { ScenarioGround } from "./use-scenario-ground.ts";

interface TurnedOrdersProps {
  readonly ground: ScenarioGround;
  /** Of the scenario. */
  readonly name: string;
  readonly turned: readonly TurnedOrder[];
}

/** Orders that come in time, run late or lose their place by a scenario; those that get worse first. */
export function TurnedOrders({ ground, name, turned }: TurnedOrdersProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const { compare } = text.whatIf;
  const title = compare.turnedIn(name);
  return (
    <section className="turned-of" aria-label={title}>
      <h4>{name}</h4>
      {turned.length === 0 ? (
        <p className="hint">{compare.noneTurned}</p>
      ) : (
        <div className="scroller turned-scroller" tabIndex={0} role="group" aria-label={title}>
          <table className="table table-small">
            <caption className="unseen">{title}</caption>
            <thead>
              <tr>
                <th scope="col">{compare.order}</th>
                <th scope="col">{compare.way}</th>
                <th scope="col">{compare.before}</th>
                <th scope="col">{compare.after}</th>
              </tr>
            </thead>
            <tbody>
              {turned.map((order) => (
                <tr key={order.orderId}>
                  <th scope="row">
                    <OrderLink ground={ground} orderId={order.orderId} />
                  </th>
                  <td>
                    <TurnWord order={order} />
                  </td>
                  <td>{sideWords(order.from, order.fromLateSeconds, text, format)}</td>
                  <td>{sideWords(order.to, order.toLateSeconds, text, format)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

interface OrderLinkProps {
  readonly ground: ScenarioGround;
  readonly orderId: string;
}

/** Leads to the order on the board, else in the book; an order that a scenario adds is nowhere yet. */
function OrderLink({ ground, orderId }: OrderLinkProps): JSX.Element {
  if (ground.plan.runsOfOrder.has(orderId))
    return <Link href={`/?${new URLSearchParams({ order: orderId }).toString()}`}>{orderId}</Link>;
  if (ground.orders.has(orderId))
    return <Link href={`/orders?${new URLSearchParams({ find: orderId }).toString()}`}>{orderId}</Link>;
  return <>{orderId}</>;
}

function TurnWord({ order }: { readonly order: TurnedOrder }): JSX.Element {
  const {
    whatIf: { compare: text },
  } = useText();
  const turn = turnOf(order);
  const tone = turn === "worse" || turn === "better" ? turn : undefined;
  return <span className={tone}>{text.turns[turn]}</span>;
}

function sideWords(
  state: TurnedOrder["from"],
  lateSeconds: number | null,
  { states, whatIf }: Text,
  format: Format,
): string {
  if (state === null) return whatIf.compare.notInBook;
  return state === "late" && lateSeconds !== null && lateSeconds > 0
    ? whatIf.compare.lateBy(format.span(lateSeconds))
    : states[state];
}
