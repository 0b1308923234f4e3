import { useRef, useState, type FormEvent, type JSX } from "react";
import { FieldFrame, halfWritten } from "../../components/field-frame.tsx";
import { Modal } from "../../components/modal.tsx";
import {
  emptyOrder,
  isDueBeforePlanning,
  readNewOrder,
  type NamedProduct,
  type NewOrderDraft,
  type NewOrderFault,
  type NewOrderField,
} from "../../kernels/new-order.ts";
import { orderFields } from "../../kernels/order-terms.ts";
import { instantOfWallText } from "../../kernels/wall-text.ts";
import { nowSeconds } from "../../sync/now.ts";
import { useText } from "../../text/text.ts";
import { OrderFieldInput } from "./order-field.tsx";
import { useBookWork } from "./use-book-edits.ts";

interface NewOrderFormProps {
  readonly products: readonly NamedProduct[];
  readonly isTaken: (id: string) => boolean;
  /** Where planning begins, on the plant's clock; null: now. */
  readonly planFrom: string | null;
  readonly onClose: () => void;
}

const productList = "products-of-plant";
/** Fields below the four that an order cannot do without. */
const moreFields = orderFields.filter((field) => !["productId", "pieces", "dueAt"].includes(field));

/** A form for one new order. Enter adds it; what is bad is named beside its field. */
export function NewOrderForm({ products, isTaken, planFrom, onClose }: NewOrderFormProps): JSX.Element {
  const { book } = useText();
  const { change, clock } = useBookWork();
  const form = useRef<HTMLFormElement>(null);
  const [draft, setDraft] = useState<NewOrderDraft>(() => emptyOrder(clock));
  const [faults, setFaults] = useState<readonly NewOrderFault[]>([]);
  const write = (changes: Partial<NewOrderDraft>): void => setDraft((before) => ({ ...before, ...changes }));
  const add = (event: FormEvent): void => {
    event.preventDefault();
    const reading = readNewOrder(draft, { clock, products, isTaken });
    const unreadable = halfWritten(form.current);
    const found = [
      ...(reading.kind === "faulty" ? reading.faults : []),
      ...unreadable.map((name) => ({ field: name as NewOrderField, kind: "unreadable" }) as const),
    ];
    setFaults(found);
    if (found.length > 0) focusFirst(form.current, found);
    else if (reading.kind === "read") {
      change([{ before: null, after: reading.terms }]);
      onClose();
    }
  };
  const remedyOf = (field: NewOrderField): string | null => {
    const fault = faults.find((each) => each.field === field);
    if (fault === undefined) return null;
    if (fault.kind === "taken") return book.numberTaken(draft.id.trim());
    return { ...book.remedies, ...book.newRemedies }[field];
  };
  const planStart = (planFrom === null ? null : instantOfWallText(clock, planFrom)) ?? nowSeconds();
  const isLateAlready = isDueBeforePlanning(draft, clock, planStart);
  return (
    <Modal title={book.addTitle} onClose={onClose}>
      <form ref={form} className="order-form new-order" noValidate onSubmit={add}>
        <FieldFrame label={book.newFields.id} name="id" remedy={remedyOf("id")}>
          {(control) => (
            <input
              {...control}
              className="field"
              autoComplete="off"
              required
              autoFocus
              value={draft.id}
              onChange={({ target }) => write({ id: target.value })}
            />
          )}
        </FieldFrame>
        <FieldFrame label={book.newFields.productId} name="productId" remedy={remedyOf("productId")}>
          {(control) => (
            <input
              {...control}
              className="field"
              autoComplete="off"
              required
              list={productList}
              value={draft.productId}
              onChange={({ target }) => write({ productId: target.value })}
            />
          )}
        </FieldFrame>
        <datalist id={productList}>
          {products.map(([id, name]) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </datalist>
        <OrderFieldInput
          field="pieces"
          draft={draft}
          isFaulty={remedyOf("pieces") !== null}
          products={products}
          onChange={write}
        />
        <FieldFrame label={book.newFields.dueAt} name="dueAt" remedy={remedyOf("dueAt")}>
          {(control) => (
            <input
              {...control}
              className="field"
              type="date"
              required
              value={draft.dueAt}
              onChange={({ target }) => write({ dueAt: target.value })}
            />
          )}
        </FieldFrame>
        <FieldFrame
          label={book.newFields.dueTime}
          name="dueTime"
          remedy={remedyOf("dueTime")}
          hint={isLateAlready ? book.newHints.dueBeforePlanning : null}
        >
          {(control) => (
            <input
              {...control}
              className="field"
              type="time"
              value={draft.dueTime}
              onChange={({ target }) => write({ dueTime: target.value })}
            />
          )}
        </FieldFrame>
        {moreFields.map((field) => (
          <OrderFieldInput
            key={field}
            field={field}
            draft={draft}
            isFaulty={remedyOf(field) !== null}
            products={products}
            onChange={write}
            {...(field === "customer" ? { hint: book.newHints.customer } : {})}
          />
        ))}
        <div className="tool-group">
          <button type="submit" className="button button-main">
            {book.addIt}
          </button>
          <button type="button" className="button" onClick={onClose}>
            {book.giveUp}
          </button>
        </div>
      </form>
    </Modal>
  );
}

/** The first bad field as they stand on the page. */
function focusFirst(form: HTMLFormElement | null, faults: readonly NewOrderFault[]): void {
  const bad = new Set<string>(faults.map(({ field }) => field));
  const fields = [...(form?.querySelectorAll<HTMLInputElement | HTMLSelectElement>("input, select") ?? [])];
  fields.find(({ name }) => bad.has(name))?.focus();
}
