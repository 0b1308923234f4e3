import { useEffect, useRef, useState, type FormEvent, type JSX } from "react";
import type { BookedOrder } from "@formweek/contracts";
import { halfWritten } from "../../components/field-frame.tsx";
import { draftOf, readDraft } from "../../kernels/order-draft.ts";
import { isSameOrder, orderFields, termsOf, type OrderField } from "../../kernels/order-terms.ts";
import { useText } from "../../text/text.ts";
import { OrderFieldInput } from "./order-field.tsx";
import { useBookWork } from "./use-book-edits.ts";

interface OrderFormProps {
  readonly order: BookedOrder;
  /** Products of the plant: id and name. */
  readonly products: readonly (readonly [id: string, name: string])[];
  readonly onClose: () => void;
}

/** All fields of one order. What was seen when the form was opened is what the change stands on. */
export function OrderForm({ order, products, onClose }: OrderFormProps): JSX.Element {
  const { book } = useText();
  const { change, isBusy, clock, refused, settled } = useBookWork();
  const [seen] = useState(() => termsOf(order));
  const [draft, setDraft] = useState(() => draftOf(seen, clock));
  const [faulty, setFaulty] = useState<readonly OrderField[]>([]);
  // How many steps were settled when this form's change was sent; it closes with that change, not with others.
  const [sentAfter, setSentAfter] = useState<number | null>(null);
  useEffect(() => {
    if (sentAfter === null || isBusy || refused !== null) return;
    if (settled > sentAfter) onClose();
    else setSentAfter(null);
  }, [sentAfter, isBusy, refused, settled, onClose]);
  const form = useRef<HTMLFormElement>(null);
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const reading = readDraft(seen, draft, clock);
    const unreadable = halfWritten(form.current);
    const wrong = orderFields.filter(
      (field) => unreadable.includes(field) || (reading.kind === "faulty" && reading.fields.includes(field)),
    );
    if (reading.kind === "faulty" || wrong.length > 0) {
      setFaulty(wrong);
      const [first = ""] = wrong;
      form.current?.querySelector<HTMLElement>(`[name="${first}"]`)?.focus();
    } else if (isSameOrder(seen, reading.terms)) onClose();
    else {
      setFaulty([]);
      setSentAfter(settled);
      change([{ before: seen, after: reading.terms }]);
    }
  };
  return (
    <form ref={form} className="order-form" noValidate aria-label={book.editTitle(order.id)} onSubmit={save}>
      {orderFields.map((field) => (
        <OrderFieldInput
          key={field}
          field={field}
          draft={draft}
          isFaulty={faulty.includes(field)}
          products={products}
          onChange={(changes) => setDraft((before) => ({ ...before, ...changes }))}
        />
      ))}
      <div className="tool-group">
        <button type="submit" className="button button-main" disabled={isBusy}>
          {isBusy ? book.saving : book.save}
        </button>
        <button type="button" className="button" onClick={onClose}>
          {book.giveUp}
        </button>
      </div>
    </form>
  );
}
