import type { JSX } from "react";
import { Link } from "wouter";
import type { Plant } from "@formweek/capacity-model";
import type { LoadBucket } from "@formweek/contracts";
import { FailureNotice, LoadingNotice } from "../../components/notice.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useLoadOrders, type LoadCell } from "../../sync/load.ts";
import { useText } from "../../text/text.ts";
import { bucketName, resourceName } from "./load-words.ts";

interface LoadOrdersProps {
  readonly plant: Plant;
  readonly kind: LoadCell["kind"];
  readonly id: string;
  /** The chosen bucket; null: none yet. */
  readonly bucket: LoadBucket | null;
}

/** The orders behind one cell of the map. */
export function LoadOrders({ plant, kind, id, bucket }: LoadOrdersProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const cell = bucket === null ? null : { kind, id, start: bucket.start, end: bucket.end };
  const orders = useLoadOrders(plant.id, cell);
  if (bucket === null) return <p className="hint">{text.load.pick}</p>;
  const title = text.load.ordersIn(resourceName(plant, kind, id), bucketName(bucket, text, format));
  const { data } = orders;
  return (
    <section aria-labelledby="load-orders-title">
      <h2 id="load-orders-title">{title}</h2>
      {data === undefined &&
        (orders.error === null ? (
          <LoadingNotice />
        ) : (
          <FailureNotice isInner cause={orders.error} onRetry={() => void orders.refetch()} />
        ))}
      {data?.total === 0 && <p className="hint">{text.load.noOrders}</p>}
      {data !== undefined && data.total > 0 && (
        <div className="scroller load-orders" tabIndex={0} role="group" aria-label={title}>
          <table className="table">
            <caption className="unseen">{title}</caption>
            <thead>
              <tr>
                <th scope="col">{text.load.order}</th>
                <th scope="col">{text.load.customer}</th>
                <th scope="col">{text.load.product}</th>
                <th scope="col">{text.load.due}</th>
                <th scope="col" className="number">
                  {text.load.hours}
                </th>
                <th scope="col">{text.load.basisTitle}</th>
              </tr>
            </thead>
            <tbody>
              {data.orders.map(({ orderId, order, runSeconds, changeSeconds, basis }) => (
                <tr key={orderId}>
                  <th scope="row">
                    {basis === "rough-cut" ? (
                      <Link href={`/orders?${new URLSearchParams({ find: orderId }).toString()}`}>
                        {orderId}
                      </Link>
                    ) : (
                      <Link href={`/?${new URLSearchParams({ order: orderId }).toString()}`}>{orderId}</Link>
                    )}
                  </th>
                  <td>{order?.customer ?? text.load.gone}</td>
                  <td>
                    {plant.products.find(({ id: known }) => known === order?.productId)?.name ??
                      order?.productId}
                  </td>
                  <td>{order === null ? "" : format.instant(Date.parse(order.due) / 1000)}</td>
                  <td className="number">{format.decimal((runSeconds + changeSeconds) / 3600, 1)}</td>
                  <td>{text.load.basis[basis]}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {data !== undefined && data.total > data.orders.length && (
        <p className="hint">
          {text.load.moreOrders(format.count(data.orders.length), format.count(data.total))}
        </p>
      )}
    </section>
  );
}
