import type { JSX } from "react";
import type { OrderTerms } from "@formweek/contracts";
import { orderValue } from "../../format/order-value.ts";
import { useFormat } from "../../format/use-format.ts";
import type { OrderConflict } from "../../kernels/order-conflict.ts";
import { useText } from "../../text/text.ts";

interface ConflictRowsProps {
  readonly conflict: OrderConflict;
  readonly productName: (productId: string) => string;
}

/** The versions of one order side by side: a row for each field in which they differ. */
export function ConflictRows({ conflict, productName }: ConflictRowsProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const { id, fields, seen, theirs, mine } = conflict;
  if (fields.length === 0) {
    const thereOrNot = (order: OrderTerms | null): string =>
      order === null
        ? text.book.gone
        : (["pieces", "dueAt"] as const)
            .map((field) => orderValue(order, field, { text, format, productName }))
            .join(" · ");
    return (
      <tr>
        <th scope="row">{id}</th>
        <td>{thereOrNot(seen)}</td>
        <td>{thereOrNot(theirs)}</td>
        <td>{thereOrNot(mine)}</td>
      </tr>
    );
  }
  return (
    <>
      {fields.map((field) => (
        <tr key={field}>
          <th scope="row">
            {id}: {text.book.fields[field]}
          </th>
          {[seen, theirs, mine].map((version, place) => (
            <td key={place}>
              {version === null ? "" : orderValue(version, field, { text, format, productName })}
            </td>
          ))}
        </tr>
      ))}
    </>
  );
}
