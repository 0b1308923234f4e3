import type { Hold } from "@formweek/contracts";
import { useEffect, useId, useRef, useState, type JSX } from "react";
import { FailureWords } from "../../components/failure-words.tsx";
import { useOrderHold } from "../../sync/holds.ts";
import { useOrders } from "../../sync/queries.ts";
import { useText } from "../../text/text.ts";

interface OrderHoldProps {
  readonly plantId: string;
  readonly hold: Hold;
  /** It is an order now; in words. */
  readonly onEnded: (words: string) => void;
  readonly onClose: () => void;
}

/** The customer orders: the number under which the hold comes into the book. */
export function OrderHold({ plantId, hold, onEnded, onClose }: OrderHoldProps): JSX.Element {
  const { holds: text } = useText();
  const id = useId();
  const book = useOrders(plantId);
  const order = useOrderHold(plantId);
  const field = useRef<HTMLInputElement>(null);
  const [number, setNumber] = useState("");
  const [isMissing, setMissing] = useState(false);
  useEffect(() => field.current?.focus(), []);
  const send = async (orderNumber: string): Promise<void> => {
    // the book may still be on its way: the number is typed faster
    const revision = book.data?.revision ?? (await book.refetch()).data?.revision;
    if (revision === undefined) return;
    order.mutate(
      { holdId: hold.holdId, orderNumber, revision },
      { onSuccess: () => onEnded(text.ordered(orderNumber)) },
    );
  };
  return (
    <form
      className="hold-order"
      aria-label={text.orderTitle(hold.customer)}
      onSubmit={(event) => {
        event.preventDefault();
        const orderNumber = number.trim();
        setMissing(orderNumber === "");
        if (orderNumber !== "" && !order.isPending) void send(orderNumber);
      }}
      onKeyDown={(event) => {
        if (event.key === "Escape") onClose();
      }}
    >
      <p className="hint">{text.orderHint}</p>
      <label htmlFor={`${id}-number`}>{text.number}</label>
      <input
        id={`${id}-number`}
        ref={field}
        className="select"
        type="text"
        maxLength={64}
        autoComplete="off"
        value={number}
        aria-invalid={isMissing}
        onChange={(event) => setNumber(event.target.value)}
      />
      {isMissing && (
        <p role="alert" className="late-words">
          {text.numberMissing}
        </p>
      )}
      <div className="tool-group">
        <button type="submit" className="button button-main" disabled={order.isPending}>
          {order.isPending ? text.ordering : text.orderNow}
        </button>
        <button type="button" className="button" onClick={onClose}>
          {text.cancel}
        </button>
      </div>
      {order.error?.problem.code === "order-book-changed" ? (
        <p role="alert" className="late-words">
          {text.bookMoved}
        </p>
      ) : (
        order.error !== null && <FailureWords cause={order.error} />
      )}
      {book.data === undefined && book.error !== null && <FailureWords cause={book.error} />}
    </form>
  );
}
