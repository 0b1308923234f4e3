import { useEffect, useState, type JSX } from "react";
import type { BookedOrder } from "@formweek/contracts";
import type { NamedProduct } from "../../kernels/new-order.ts";
import { useText } from "../../text/text.ts";
import { NewOrderForm } from "./new-order-form.tsx";

interface AddOrderProps {
  readonly orders: readonly BookedOrder[];
  readonly products: readonly NamedProduct[];
  /** Where planning begins, on the plant's clock; null: now. */
  readonly planFrom: string | null;
}

/** Opens the form for a new order, by button or by the Insert key. */
export function AddOrder({ orders, products, planFrom }: AddOrderProps): JSX.Element {
  const { book } = useText();
  const [isOpen, setOpen] = useState(false);
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      const isElsewhere =
        event.target instanceof Element && event.target.closest("input, textarea, select, dialog") !== null;
      if (event.key !== "Insert" || event.ctrlKey || event.shiftKey || event.altKey || isElsewhere) return;
      event.preventDefault();
      setOpen(true);
    };
    window.addEventListener("keydown", onKeyDown);
    return () => window.removeEventListener("keydown", onKeyDown);
  }, []);
  return (
    <>
      <button
        type="button"
        className="button"
        title={book.addHint}
        aria-keyshortcuts="Insert"
        onClick={() => setOpen(true)}
      >
        {book.add}
      </button>
      {isOpen && (
        <NewOrderForm
          products={products}
          planFrom={planFrom}
          isTaken={(id) => orders.some((order) => order.id === id)}
          onClose={() => setOpen(false)}
        />
      )}
    </>
  );
}
