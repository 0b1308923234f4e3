import { useId, useState, type FormEvent, type JSX } from "react";
import type { BookedOrder } from "@formweek/contracts";
import { useFormat } from "../../format/use-format.ts";
import { bulkChanges, type BulkChange } from "../../kernels/bulk-change.ts";
import { bulkKinds, readBulk, valueOfBulk, type BulkKind } from "../../kernels/bulk-draft.ts";
import { termsOf } from "../../kernels/order-terms.ts";
import { useText } from "../../text/text.ts";
import { useBookWork } from "./use-book-edits.ts";

interface BulkBarProps {
  readonly selected: readonly BookedOrder[];
  readonly onUnselect: () => void;
}

const firstValues = { days: "1", at: "", weight: "1", kind: "firm", parts: "yes" } as const;

/** One change for all selected orders; a step like any other, so that one Undo takes all of it back. */
export function BulkBar({ selected, onUnselect }: BulkBarProps): JSX.Element {
  const { book } = useText();
  const format = useFormat();
  const { clock, change, isBusy } = useBookWork();
  const [kind, setKind] = useState<BulkKind>("due shifted");
  const [value, setValue] = useState<string>(firstValues.days);
  const [fault, setFault] = useState<string | null>(null);
  const faultId = useId();
  const make = (wanted: BulkChange): void => {
    const changes = bulkChanges(selected.map(termsOf), wanted, clock);
    setFault(changes.length === 0 ? book.nothingToChange : null);
    change(changes);
  };
  const apply = (event: FormEvent): void => {
    event.preventDefault();
    const read = readBulk(kind, value, clock);
    const valueKind = valueOfBulk(kind);
    if (read !== null) make(read);
    else if (valueKind in book.bulkFaults)
      setFault(book.bulkFaults[valueKind as keyof typeof book.bulkFaults]);
  };
  return (
    <form className="bulk-bar" aria-label={book.bulk} noValidate onSubmit={apply}>
      <strong role="status">{book.selected(selected.length, format.count(selected.length))}</strong>
      <select
        className="select"
        aria-label={book.bulkWhat}
        value={kind}
        onChange={({ target }) => {
          const chosen = bulkKinds.find((each) => each === target.value) ?? "due shifted";
          setKind(chosen);
          setValue(firstValues[valueOfBulk(chosen)]);
          setFault(null);
        }}
      >
        {bulkKinds.map((each) => (
          <option key={each} value={each}>
            {book.bulkKinds[each]}
          </option>
        ))}
      </select>
      <BulkValue
        kind={kind}
        value={value}
        faultId={fault === null ? null : faultId}
        onChange={(next) => {
          setValue(next);
          setFault(null);
        }}
      />
      <button type="submit" className="button button-main" disabled={isBusy}>
        {book.apply}
      </button>
      <button type="button" className="button" disabled={isBusy} onClick={() => make({ kind: "removed" })}>
        {book.remove}
      </button>
      <button type="button" className="button" onClick={onUnselect}>
        {book.unselect}
      </button>
      {fault !== null && (
        <span id={faultId} role="alert" className="late-words">
          {fault}
        </span>
      )}
    </form>
  );
}

interface BulkValueProps {
  readonly kind: BulkKind;
  readonly value: string;
  readonly faultId: string | null;
  readonly onChange: (value: string) => void;
}

function BulkValue({ kind, value, faultId, onChange }: BulkValueProps): JSX.Element {
  const { book, orders } = useText();
  const valueKind = valueOfBulk(kind);
  const told = faultId === null ? {} : { "aria-invalid": true, "aria-describedby": faultId };
  if (valueKind === "kind" || valueKind === "parts") {
    const choices =
      valueKind === "kind"
        ? ([
            ["firm", orders.firm],
            ["forecast", orders.forecast],
          ] as const)
        : ([
            ["yes", orders.yes],
            ["no", orders.no],
          ] as const);
    return (
      <select
        className="select"
        aria-label={book.bulkKinds[kind]}
        value={value}
        onChange={({ target }) => onChange(target.value)}
      >
        {choices.map(([id, name]) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    );
  }
  const label = book.bulkValue[valueKind];
  return (
    <input
      className="field"
      {...told}
      type={valueKind === "at" ? "datetime-local" : "text"}
      aria-label={label}
      title={kind === "earliest set" ? book.bulkEmptyEarliest : label}
      size={valueKind === "at" ? 18 : 6}
      value={value}
      onChange={({ target }) => onChange(target.value)}
    />
  );
}
