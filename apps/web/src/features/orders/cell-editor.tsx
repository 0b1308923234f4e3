import { useId, useRef, useState, type JSX, type KeyboardEvent } from "react";
import type { BookedOrder } from "@formweek/contracts";
import { draftOf, readDraft } from "../../kernels/order-draft.ts";
import { isSameOrder, termsOf } from "../../kernels/order-terms.ts";
import { useText } from "../../text/text.ts";
import { inputOf } from "./order-field.tsx";
import { useBookWork } from "./use-book-edits.ts";

/** Fields that are edited in their cell, in the sequence in which Tab goes through them. */
export const cellFields = ["customer", "pieces", "dueAt"] as const;
export type CellField = (typeof cellFields)[number];

interface CellEditorProps {
  readonly order: BookedOrder;
  readonly field: CellField;
  /** Told when the cell is done with: the field to go on to, or null to go back to the row. */
  readonly onDone: (next: CellField | null) => void;
}

/** A field of an order in its cell: Enter and leaving keep what was written, Escape gives it up, Tab goes on. */
export function CellEditor({ order, field, onDone }: CellEditorProps): JSX.Element {
  const { book } = useText();
  const { change, clock } = useBookWork();
  const [seen] = useState(() => termsOf(order));
  const [value, setValue] = useState(() => draftOf(seen, clock)[field]);
  const [isFaulty, setFaulty] = useState(false);
  const isOver = useRef(false);
  const remedyId = useId();
  const keep = (next: CellField | null): void => {
    if (isOver.current) return;
    // Only this field is the planner's: of the others the order as it is by now is what was seen.
    const base = { ...termsOf(order), [field]: seen[field] };
    const reading = readDraft(base, { ...draftOf(base, clock), [field]: value }, clock);
    if (reading.kind === "faulty") {
      setFaulty(true);
      return;
    }
    isOver.current = true;
    if (!isSameOrder(base, reading.terms)) change([{ before: base, after: reading.terms }]);
    onDone(next);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    event.stopPropagation();
    if (event.key === "Enter") keep(null);
    else if (event.key === "Escape") {
      isOver.current = true;
      onDone(null);
    } else if (event.key === "Tab") {
      const next = cellFields[cellFields.indexOf(field) + (event.shiftKey ? -1 : 1)];
      event.preventDefault();
      keep(next ?? null);
    }
  };
  return (
    <>
      <input
        className="field cell-field"
        {...inputOf(field)}
        aria-label={book.editCell(book.fields[field], order.id)}
        aria-invalid={isFaulty}
        {...(isFaulty ? { "aria-describedby": remedyId } : {})}
        value={value}
        // The cell was pressed to be written in.
        autoFocus
        onFocus={({ target }) => field !== "dueAt" && target.select()}
        onChange={({ target }) => setValue(target.value)}
        onClick={(event) => event.stopPropagation()}
        onKeyDown={onKeyDown}
        onBlur={() => keep(null)}
      />
      {isFaulty && (
        <span id={remedyId} role="alert" className="cell-remedy late-words">
          {book.remedies[field]}
        </span>
      )}
    </>
  );
}
