import type { JSX } from "react";
import type { Plant } from "@formweek/capacity-model";
import type { OrderChange, OrderTerms } from "@formweek/contracts";
import { useFormat } from "../../format/use-format.ts";
import { orderValue } from "../../format/order-value.ts";
import { fieldsBetween, type OrderField } from "../../kernels/order-terms.ts";
import { useText } from "../../text/text.ts";

interface ChangeListProps {
  readonly changes: readonly OrderChange[];
  readonly plant: Plant | undefined;
}

const mostShown = 200;
const newFields: readonly OrderField[] = ["customer", "productId", "pieces", "dueAt"];

/** What a checked file would change, order by order and field by field. */
export function ChangeList({ changes, plant }: ChangeListProps): JSX.Element {
  const { imports: text, book } = useText();
  const format = useFormat();
  const rows = changes.slice(0, mostShown).flatMap(rowsOf);
  return (
    <section>
      <h2>{text.changesTitle}</h2>
      {changes.length > mostShown && (
        <p className="hint">{text.changesCut(format.count(mostShown), format.count(changes.length))}</p>
      )}
      <div className="scroller report-table" tabIndex={0} role="region" aria-label={text.changesTitle}>
        <table className="table">
          <thead>
            <tr>
              <th scope="col">{text.order}</th>
              <th scope="col">{text.column}</th>
              <th scope="col">{text.before}</th>
              <th scope="col">{text.after}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ id, field, before, after }) => (
              <tr key={`${id} ${field}`}>
                <th scope="row">{id}</th>
                <td>{book.fields[field]}</td>
                <td>
                  {before === null ? text.newOrder : <Value order={before} field={field} plant={plant} />}
                </td>
                <td>
                  <Value order={after} field={field} plant={plant} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

interface ChangedField {
  readonly id: string;
  readonly field: OrderField;
  readonly before: OrderTerms | null;
  readonly after: OrderTerms;
}

function rowsOf({ before, after }: OrderChange): readonly ChangedField[] {
  if (after === null) return [];
  const fields = before === null ? newFields : fieldsBetween(before, after);
  return fields.map((field) => ({ id: after.id, field, before, after }));
}

interface ValueProps {
  readonly order: OrderTerms;
  readonly field: OrderField;
  readonly plant: Plant | undefined;
}

function Value({ order, field, plant }: ValueProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const productName = (id: string): string => plant?.products.find((each) => each.id === id)?.name ?? id;
  return <>{orderValue(order, field, { text, format, productName })}</>;
}
