import type { BookedOrder } from "@formweek/contracts";
import type { JSX } from "react";
import { FieldFrame } from "../../components/field-frame.tsx";
import type { Format } from "../../format/format.ts";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { isDueBeforePlanning, type NewOrderDraft } from "../../kernels/new-order.ts";
import { productMeant } from "../../kernels/product-finder.ts";
import type { ChangeDraft } from "../../kernels/scenario-draft.ts";
import { useText, type Text } from "../../text/text.ts";
import { FoundField, TextField } from "./change-fields.tsx";
import type { ChangeFormProps } from "./change-form-props.ts";
import type { ScenarioGround } from "./use-scenario-ground.ts";

type OrderChangeDraft = Extract<
  ChangeDraft,
  { readonly kind: "cancel order" | "change order" | "rush order" }
>;

/** The fields of a change of the order book. */
export function OrderChangeForm(props: ChangeFormProps<OrderChangeDraft>): JSX.Element {
  const { ground, draft, remedies, onChange } = props;
  const {
    whatIf: { editor: text },
  } = useText();
  switch (draft.kind) {
    case "rush order":
      return (
        <RushOrderForm
          ground={ground}
          order={draft.order}
          remedies={remedies}
          onChange={(part) => onChange({ ...draft, order: { ...draft.order, ...part } })}
        />
      );
    case "cancel order":
      return (
        <div className="change-form">
          <OrderField
            ground={ground}
            value={draft.orderId}
            remedies={remedies}
            onChange={(orderId) => onChange({ ...draft, orderId })}
          />
        </div>
      );
    case "change order":
      return (
        <div className="change-form">
          <OrderField
            ground={ground}
            value={draft.orderId}
            remedies={remedies}
            onChange={(orderId) => onChange({ ...draft, orderId })}
          />
          <TextField
            label={text.fields.pieces}
            name="pieces"
            remedy={remedies.get("pieces") ?? null}
            inputMode="numeric"
            value={draft.pieces}
            onChange={(pieces) => onChange({ ...draft, pieces })}
          />
          <FieldFrame label={text.fields.dueAt} name="dueAt" remedy={remedies.get("dueAt") ?? null}>
            {(control) => (
              <input
                {...control}
                className="field"
                type="datetime-local"
                value={draft.dueAt}
                onChange={({ target }) => onChange({ ...draft, dueAt: target.value })}
              />
            )}
          </FieldFrame>
        </div>
      );
  }
}

interface OrderFieldProps {
  readonly ground: ScenarioGround;
  readonly value: string;
  readonly remedies: ReadonlyMap<string, string>;
  readonly onChange: (orderId: string) => void;
}

/** An order of the book found by what is typed, with what it is. */
function OrderField({ ground, value, remedies, onChange }: OrderFieldProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const order = ground.orders.get(value.trim());
  return (
    <FoundField
      label={text.whatIf.editor.fields.orderId}
      name="orderId"
      remedy={remedies.get("orderId") ?? null}
      hint={order === undefined ? null : orderWords(order, ground, text, format)}
      choices={[...ground.orders.values()].map((each) => [each.id, orderWords(each, ground, text, format)])}
      value={value}
      onChange={onChange}
    />
  );
}

function orderWords(order: BookedOrder, { plant }: ScenarioGround, text: Text, format: Format): string {
  const product = plant.products.find(({ id }) => id === order.productId)?.name ?? order.productId;
  const what = `${order.customer}, ${product}, ${text.units.pieces(format.count(order.pieces))}`;
  return text.whatIf.editor.orderIs(what, format.instant(secondsOf(order.dueAt)));
}

interface RushOrderFormProps {
  readonly ground: ScenarioGround;
  readonly order: NewOrderDraft;
  readonly remedies: ReadonlyMap<string, string>;
  readonly onChange: (part: Partial<NewOrderDraft>) => void;
}

/** A new order: what it cannot do without, and whose it is. */
function RushOrderForm({ ground, order, remedies, onChange }: RushOrderFormProps): JSX.Element {
  const { book, whatIf } = useText();
  const remedy = (field: string): string | null => remedies.get(field) ?? null;
  const product = productMeant(ground.plant.products, order.productId);
  const isLateAlready = isDueBeforePlanning(order, ground.clock, ground.plan.startAt);
  return (
    <div className="change-form">
      <TextField
        label={book.newFields.id}
        name="id"
        remedy={remedy("id")}
        value={order.id}
        onChange={(id) => onChange({ id })}
      />
      <FoundField
        label={book.newFields.productId}
        name="productId"
        remedy={remedy("productId")}
        hint={product === null ? null : whatIf.editor.meant(product.name)}
        choices={ground.plant.products.map(({ id, name }) => [id, name])}
        value={order.productId}
        onChange={(productId) => onChange({ productId })}
      />
      <TextField
        label={book.fields.pieces}
        name="pieces"
        remedy={remedy("pieces")}
        inputMode="numeric"
        value={order.pieces}
        onChange={(pieces) => onChange({ pieces })}
      />
      <FieldFrame label={book.newFields.dueAt} name="dueAt" remedy={remedy("dueAt")}>
        {(control) => (
          <input
            {...control}
            className="field"
            type="date"
            value={order.dueAt}
            onChange={({ target }) => onChange({ dueAt: target.value })}
          />
        )}
      </FieldFrame>
      <FieldFrame
        label={book.newFields.dueTime}
        name="dueTime"
        remedy={remedy("dueTime")}
        hint={isLateAlready ? book.newHints.dueBeforePlanning : null}
      >
        {(control) => (
          <input
            {...control}
            className="field"
            type="time"
            value={order.dueTime}
            onChange={({ target }) => onChange({ dueTime: target.value })}
          />
        )}
      </FieldFrame>
      <TextField
        label={book.fields.customer}
        name="customer"
        remedy={remedy("customer")}
        hint={book.newHints.customer}
        value={order.customer}
        onChange={(customer) => onChange({ customer })}
      />
    </div>
  );
}
