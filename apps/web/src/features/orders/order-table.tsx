import { useRef, useState, type JSX, type KeyboardEvent } from "react";
import type { BookedOrder } from "@formweek/contracts";
import { Icon } from "../../components/icon.tsx";
import { useRowWindow } from "../../components/row-window.ts";
import { SpacerRow } from "../../components/spacer-row.tsx";
import type { OrderColumn, OrderSort } from "../../kernels/order-rows.ts";
import { useText } from "../../text/text.ts";
import type { CellField } from "./cell-editor.tsx";
import { OrderPanel } from "./order-panel.tsx";
import { OrderRow } from "./order-row.tsx";
import type { OrderSelection } from "./use-order-selection.ts";

interface OrderTableProps {
  readonly rows: readonly BookedOrder[];
  readonly productName: (productId: string) => string;
  /** Products of the plant: id and name. */
  readonly products: readonly (readonly [id: string, name: string])[];
  readonly selection: OrderSelection;
  readonly sort: OrderSort;
  readonly onSort: (column: OrderColumn) => void;
}

/** Orders as rows; only those in sight are in the page, so that 50,000 stay quick. Choosing a row opens its panel. */
export function OrderTable({
  rows,
  productName,
  products,
  selection,
  sort,
  onSort,
}: OrderTableProps): JSX.Element {
  const { orders: text, book } = useText();
  const scrollRef = useRef<HTMLDivElement>(null);
  const [openId, setOpenId] = useState<string | null>(null);
  const [editing, setEditing] = useState<EditedCell | null>(null);
  const virtual = useRowWindow(rows.length, scrollRef);
  const items = virtual.getVirtualItems();
  const above = items[0]?.start ?? 0;
  const below = virtual.getTotalSize() - (items.at(-1)?.end ?? 0);
  const open = rows.find((order) => order.id === openId);
  const head = { sort, onSort };
  const close = (event: KeyboardEvent): void => {
    if (event.key === "Escape") setOpenId(null);
  };
  const goOn = (orderId: string, next: CellField | null): void => {
    setEditing(next === null ? null : { orderId, field: next });
    if (next === null) focusOrder(scrollRef.current, orderId);
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
              <th scope="col" className="tick-cell">
                <input
                  type="checkbox"
                  aria-label={book.selectAll}
                  checked={selection.isAll}
                  ref={(box) => {
                    if (box !== null) box.indeterminate = selection.selected.length > 0 && !selection.isAll;
                  }}
                  onChange={selection.toggleAll}
                />
              </th>
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
                  isSelected={selection.has(order.id)}
                  onSelect={(isRange) => selection.toggle(order.id, isRange)}
                  editing={editing?.orderId === order.id ? editing.field : null}
                  onEdit={(field) => setEditing({ orderId: order.id, field })}
                  onEdited={(next) => goOn(order.id, next)}
                  onOpen={() => setOpenId(order.id === openId ? null : order.id)}
                />
              );
            })}
            <SpacerRow height={below} />
          </tbody>
        </table>
      </div>
      {open !== undefined && (
        <OrderPanel
          key={open.id}
          order={open}
          product={productName(open.productId)}
          products={products}
          onClose={() => setOpenId(null)}
        />
      )}
    </div>
  );
}

interface EditedCell {
  readonly orderId: string;
  readonly field: CellField;
}

/** The focus goes back to the order that was edited, unless it has gone elsewhere already. */
function focusOrder(scroller: HTMLElement | null, orderId: string): void {
  requestAnimationFrame(() => {
    const isFree = document.activeElement === document.body || document.activeElement === null;
    if (isFree) scroller?.querySelector<HTMLElement>(`[data-order="${CSS.escape(orderId)}"]`)?.focus();
  });
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
