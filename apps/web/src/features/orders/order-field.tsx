import type { JSX } from "react";
import { FieldFrame, type FieldControlProps } from "../../components/field-frame.tsx";
import type { OrderDraft } from "../../kernels/order-draft.ts";
import type { OrderField } from "../../kernels/order-terms.ts";
import { useText } from "../../text/text.ts";

interface OrderFieldInputProps {
  readonly field: OrderField;
  readonly draft: OrderDraft;
  readonly isFaulty: boolean;
  /** What else to know before writing there. */
  readonly hint?: string;
  /** Products to choose from: id and name. */
  readonly products: readonly (readonly [id: string, name: string])[];
  readonly onChange: (changes: Partial<OrderDraft>) => void;
}

/** One field of an order in a form, with what to write where it is faulty. */
export function OrderFieldInput(props: OrderFieldInputProps): JSX.Element {
  const { book } = useText();
  const { field, isFaulty, hint = null } = props;
  return (
    <FieldFrame
      label={book.fields[field]}
      name={field}
      remedy={isFaulty ? book.remedies[field] : null}
      hint={hint}
      isTick={field === "partsAllowed"}
    >
      {(control) => <FieldControl {...props} control={control} />}
    </FieldFrame>
  );
}

function FieldControl({
  field,
  draft,
  products,
  onChange,
  control,
}: OrderFieldInputProps & { readonly control: FieldControlProps }): JSX.Element {
  const { orders } = useText();
  if (field === "partsAllowed") {
    return (
      <input
        {...control}
        type="checkbox"
        checked={draft.partsAllowed}
        onChange={({ target }) => onChange({ partsAllowed: target.checked })}
      />
    );
  }
  if (field === "kind" || field === "productId") {
    const choices = field === "productId" ? products : kinds.map((kind) => [kind, orders[kind]] as const);
    const value = draft[field];
    return (
      <select
        {...control}
        className="select"
        value={value}
        onChange={({ target }) => onChange({ [field]: target.value })}
      >
        {!choices.some(([id]) => id === value) && <option value={value}>{value}</option>}
        {choices.map(([id, name]) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    );
  }
  return (
    <input
      {...control}
      className="field"
      {...inputOf(field)}
      value={draft[field]}
      onChange={({ target }) => onChange({ [field]: target.value })}
    />
  );
}

const kinds = ["firm", "forecast"] as const;

/** How a field is typed; times go by the plant's clock. */
export function inputOf(field: OrderField): {
  readonly type: "text" | "datetime-local";
  readonly inputMode?: "numeric" | "decimal";
} {
  if (field === "dueAt" || field === "earliestStartAt") return { type: "datetime-local" };
  if (field === "pieces") return { type: "text", inputMode: "numeric" };
  return field === "customer" ? { type: "text" } : { type: "text", inputMode: "decimal" };
}
