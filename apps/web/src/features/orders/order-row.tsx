import type { JSX, KeyboardEvent } from "react";
import type { BookedOrder } from "@formweek/contracts";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { useText } from "../../text/text.ts";
import { CellEditor, cellFields, type CellField } from "./cell-editor.tsx";
import { StateBadge } from "./state-badge.tsx";

interface OrderRowProps {
  readonly order: BookedOrder;
  readonly place: number;
  readonly product: string;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
  readonly isSelected: boolean;
  readonly onSelect: (isRange: boolean) => void;
  /** Field whose cell is being written in; null: none of this row. */
  readonly editing: CellField | null;
  readonly onEdit: (field: CellField) => void;
  readonly onEdited: (next: CellField | null) => void;
}

/** One order of the book. Customer, pieces and due are changed in their cells; elsewhere a press opens the order. */
export function OrderRow(props: OrderRowProps): JSX.Element {
  const { order, place, product, isOpen, onOpen, isSelected, onSelect, onEdit } = props;
  const text = useText();
  const format = useFormat();
  const { slackSeconds } = order;
  const slack =
    slackSeconds === null
      ? ""
      : slackSeconds < 0
        ? text.orders.lateBy(format.span(slackSeconds))
        : format.span(slackSeconds);
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== "F2") return;
    event.preventDefault();
    onEdit(cellFields[0]);
  };
  return (
    <tr aria-rowindex={place} className={isOpen ? "open-row" : undefined} onClick={onOpen}>
      <td className="tick-cell" onClick={(event) => event.stopPropagation()}>
        <input
          type="checkbox"
          aria-label={text.book.select(order.id)}
          checked={isSelected}
          onChange={({ nativeEvent }) => onSelect(nativeEvent instanceof MouseEvent && nativeEvent.shiftKey)}
        />
      </td>
      <th scope="row">
        <button
          type="button"
          className="text-button"
          data-order={order.id}
          aria-expanded={isOpen}
          aria-keyshortcuts="F2"
          onKeyDown={onKeyDown}
          onClick={(event) => {
            event.stopPropagation();
            onOpen();
          }}
        >
          {order.id}
        </button>
      </th>
      <EditableCell field="customer" shown={order.customer} {...props} />
      <td>{product}</td>
      <EditableCell field="pieces" shown={format.count(order.pieces)} {...props} />
      <td className="number">{order.fromStockPieces === null ? "" : format.count(order.fromStockPieces)}</td>
      <td className="number">{order.toMakePieces === null ? "" : format.count(order.toMakePieces)}</td>
      <EditableCell field="dueAt" shown={format.instant(secondsOf(order.dueAt))} {...props} />
      <td>{order.finish === null ? "" : format.instant(secondsOf(order.finish))}</td>
      <td className={slackSeconds !== null && slackSeconds < 0 ? "number late-words" : "number"}>{slack}</td>
      <td>
        <StateBadge state={order.state} />
      </td>
    </tr>
  );
}

interface EditableCellProps extends OrderRowProps {
  readonly field: CellField;
  readonly shown: string;
}

function EditableCell({ field, shown, order, editing, onEdit, onEdited }: EditableCellProps): JSX.Element {
  const isEdited = editing === field;
  const look = `edit-cell${field === "pieces" ? " number" : ""}${isEdited ? " edited-cell" : ""}`;
  return (
    <td
      className={look}
      onClick={(event) => {
        event.stopPropagation();
        if (!isEdited) onEdit(field);
      }}
    >
      {isEdited ? <CellEditor order={order} field={field} onDone={onEdited} /> : shown}
    </td>
  );
}
