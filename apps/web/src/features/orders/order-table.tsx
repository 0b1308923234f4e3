import { useVirtualizer } from "@tanstack/react-virtual";
import { useRef, useState, type JSX, type KeyboardEvent } from "react";
import type { BookedOrder } from "@formweek/contracts";
import { Icon } from "../../components/icon.tsx";
import { SpacerRow } from "../../components/spacer-row.tsx";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import type { OrderColumn, OrderSort } from "../../kernels/order-rows.ts";
import { useText } from "../../text/text.ts";
import { OrderPanel } from "./order-panel.tsx";
import { StateBadge } from "./state-badge.tsx";

const rowPx = 37;

interface OrderTableProps {
  readonly rows: readonly BookedOrder[];
  readonly productName: (productId: string) => string;
  readonly sort: OrderSort;
  readonly onSort: (column: OrderColumn) => void;
}

/** Orders as rows; only those in sight are in the page, so that 50,000 stay quick. Choosing a row opens its panel. */
export function OrderTable({ rows, productName, sort, onSort }: OrderTableProps): JSX.Element {
  const { orders: text } = useText();
  const scrollRef = useRef<HTMLDivElement>(null);
  const [openId, setOpenId] = useState<string | null>(null);
  const virtual = useVirtualizer({
    count: rows.length,
    getScrollElement: () => scrollRef.current,
    estimateSize: () => rowPx,
    overscan: 14,
  });
  const items = virtual.getVirtualItems();
  const above = items[0]?.start ?? 0;
  const below = virtual.getTotalSize() - (items.at(-1)?.end ?? 0);
  const open = rows.find((order) => order.id === openId);
  const head = { sort, onSort };
  const close = (event: KeyboardEvent): void => {
    if (event.key === "Escape") setOpenId(null);
  };
  return (
    <div className="book" onKeyDown={close}>
      <div
        className="scroller scroller-fill"
        ref={scrollRef}
        tabIndex={0}
        role="region"
        aria-label={text.title}
      >
        <table className="table order-table" aria-rowcount={rows.length + 1}>
          <caption className="unseen">{text.title}</caption>
          <thead>
            <tr aria-rowindex={1}>
              <SortHead column="id" title={text.order} {...head} />
              <SortHead column="customer" title={text.customer} {...head} />
              <SortHead column="productId" title={text.product} {...head} />
              <SortHead column="pieces" title={text.pieces} isNumber {...head} />
              <th scope="col" className="number">
                {text.fromStock}
              </th>
              <th scope="col" className="number">
                {text.toMake}
              </th>
              <SortHead column="dueAt" title={text.due} {...head} />
              <SortHead column="finish" title={text.finish} {...head} />
              <SortHead column="slackSeconds" title={text.slack} isNumber {...head} />
              <SortHead column="state" title={text.state} {...head} />
            </tr>
          </thead>
          <tbody>
            <SpacerRow height={above} />
            {items.map((item) => {
              const order = rows[item.index];
              return order === undefined ? null : (
                <OrderRow
                  key={order.id}
                  order={order}
                  place={item.index + 2}
                  product={productName(order.productId)}
                  isOpen={order.id === openId}
                  onOpen={() => setOpenId(order.id === openId ? null : order.id)}
                />
              );
            })}
            <SpacerRow height={below} />
          </tbody>
        </table>
      </div>
      {open !== undefined && (
        <OrderPanel order={open} product={productName(open.productId)} onClose={() => setOpenId(null)} />
      )}
    </div>
  );
}

interface SortHeadProps {
  readonly column: OrderColumn;
  readonly title: string;
  readonly isNumber?: boolean;
  readonly sort: OrderSort;
  readonly onSort: (column: OrderColumn) => void;
}

function SortHead({ column, title, isNumber = false, sort, onSort }: SortHeadProps): JSX.Element {
  const isOn = sort.column === column;
  const direction = sort.isDescending ? "descending" : "ascending";
  return (
    <th scope="col" className={isNumber ? "number" : undefined} aria-sort={isOn ? direction : undefined}>
      <button type="button" className="sort-button" onClick={() => onSort(column)}>
        {title}
        {isOn && <Icon name={sort.isDescending ? "down" : "up"} />}
      </button>
    </th>
  );
}

interface OrderRowProps {
  readonly order: BookedOrder;
  readonly place: number;
  readonly product: string;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
}

function OrderRow({ order, place, product, isOpen, onOpen }: OrderRowProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const { slackSeconds } = order;
  const slack =
    slackSeconds === null
      ? ""
      : slackSeconds < 0
        ? text.orders.lateBy(format.span(slackSeconds))
        : format.span(slackSeconds);
  return (
    <tr aria-rowindex={place} className={isOpen ? "open-row" : undefined} onClick={onOpen}>
      <th scope="row">
        <button
          type="button"
          className="text-button"
          aria-expanded={isOpen}
          onClick={(event) => {
            event.stopPropagation();
            onOpen();
          }}
        >
          {order.id}
        </button>
      </th>
      <td>{order.customer}</td>
      <td>{product}</td>
      <td className="number">{format.count(order.pieces)}</td>
      <td className="number">{order.fromStockPieces === null ? "" : format.count(order.fromStockPieces)}</td>
      <td className="number">{order.toMakePieces === null ? "" : format.count(order.toMakePieces)}</td>
      <td>{format.instant(secondsOf(order.dueAt))}</td>
      <td>{order.finish === null ? "" : format.instant(secondsOf(order.finish))}</td>
      <td className={slackSeconds !== null && slackSeconds < 0 ? "number late-words" : "number"}>{slack}</td>
      <td>
        <StateBadge state={order.state} />
      </td>
    </tr>
  );
}
