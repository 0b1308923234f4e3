import { useMemo, useState, type JSX, type ReactNode } from "react";
import { useText } from "../text/text.ts";
import { EmptyNotice } from "./notice.tsx";
import { FindBox } from "./find-box.tsx";

export interface RecordColumn<Row> {
  readonly title: string;
  readonly cell: (row: Row) => ReactNode;
  readonly isNumber?: boolean;
}

interface RecordTableProps<Row> {
  readonly caption: string;
  readonly rows: readonly Row[];
  readonly columns: readonly RecordColumn<Row>[];
  readonly keyOf: (row: Row) => string;
  /** What the find box looks in. */
  readonly wordsOf: (row: Row) => string;
}

/** Plain table of records with a find box; the first column heads its row. */
export function RecordTable<Row>({
  caption,
  rows,
  columns,
  keyOf,
  wordsOf,
}: RecordTableProps<Row>): JSX.Element {
  const text = useText();
  const [sought, setSought] = useState("");
  const shown = useMemo(() => {
    const word = sought.trim().toLowerCase();
    return word === "" ? rows : rows.filter((row) => wordsOf(row).toLowerCase().includes(word));
  }, [rows, sought, wordsOf]);
  if (rows.length === 0) return <EmptyNotice isInner title={text.plant.noRows} />;
  return (
    <div className="record-table">
      {rows.length > 8 && (
        <FindBox label={text.plant.find} hint={text.plant.find} value={sought} onChange={setSought} />
      )}
      <div className="scroller" tabIndex={0} role="region" aria-label={caption}>
        <table className="table">
          <caption className="unseen">{caption}</caption>
          <thead>
            <tr>
              {columns.map((column) => (
                <th
                  key={column.title}
                  scope="col"
                  className={column.isNumber === true ? "number" : undefined}
                >
                  {column.title}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <tr key={keyOf(row)}>
                {columns.map((column, at) =>
                  at === 0 ? (
                    <th key={column.title} scope="row">
                      {column.cell(row)}
                    </th>
                  ) : (
                    <td key={column.title} className={column.isNumber === true ? "number" : undefined}>
                      {column.cell(row)}
                    </td>
                  ),
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}
