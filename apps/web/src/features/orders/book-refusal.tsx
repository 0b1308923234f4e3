import { useMemo, type JSX } from "react";
import type { BookedOrder } from "@formweek/contracts";
import { Icon } from "../../components/icon.tsx";
import { problemInWords } from "../../components/notice.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import {
  conflictsOf,
  onTopOfTheirs,
  withoutConflicts,
  type OrderConflict,
} from "../../kernels/order-conflict.ts";
import { termsOf } from "../../kernels/order-terms.ts";
import { useText } from "../../text/text.ts";
import { ConflictRows } from "./conflict-rows.tsx";
import { useBookWork } from "./use-book-edits.ts";

interface BookRefusalProps {
  /** The book as it is now. */
  readonly orders: readonly BookedOrder[];
  readonly productName: (productId: string) => string;
}

const mostShown = 5;

/** Why the last change was not made; where others were faster, both versions and the choice between them. */
export function BookRefusal({ orders, productName }: BookRefusalProps): JSX.Element | null {
  const text = useText();
  const naming = useNaming();
  const { refused, failure, decide, putAway, isBusy } = useBookWork();
  const isRefused = refused !== null;
  const book = useMemo(
    () => new Map(isRefused ? orders.map((order) => [order.id, termsOf(order)]) : []),
    [orders, isRefused],
  );
  if (refused === null || failure === null) return null;
  const conflicts = failure.problem.code === "order-book-changed" ? conflictsOf(refused.changes, book) : [];
  if (conflicts.length > 0) return <Conflicts conflicts={conflicts} book={book} productName={productName} />;
  const { title, cause, remedy, faults } = problemInWords(failure, text, naming);
  return (
    <div className="notice notice-failure book-refusal" role="alert">
      <h2>
        <Icon name="warn" /> {title}
      </h2>
      <p>
        {cause} {remedy} {text.book.refused}
      </p>
      {faults.length > 0 && (
        <ul>
          {faults.map((fault) => (
            <li key={`${fault.path} ${fault.problem}`}>
              {fault.path}: {fault.problem} {fault.remedy}
            </li>
          ))}
        </ul>
      )}
      <div className="tool-group">
        <button type="button" className="button" disabled={isBusy} onClick={() => decide(refused.changes)}>
          {text.book.again}
        </button>
        <button type="button" className="button" onClick={putAway}>
          {text.book.dismiss}
        </button>
      </div>
    </div>
  );
}

interface ConflictsProps {
  readonly conflicts: readonly OrderConflict[];
  readonly book: Parameters<typeof conflictsOf>[1];
  readonly productName: (productId: string) => string;
}

function Conflicts({ conflicts, book, productName }: ConflictsProps): JSX.Element {
  const { book: text } = useText();
  const format = useFormat();
  const { refused, decide, leaveToOthers, isBusy } = useBookWork();
  const changes = refused?.changes ?? [];
  const others = withoutConflicts(changes, book);
  const mine = onTopOfTheirs(changes, book);
  const more = conflicts.length - mostShown;
  return (
    <div className="notice notice-failure book-refusal" role="alert">
      <h2>
        <Icon name="warn" /> {text.conflictTitle(conflicts.length, format.count(conflicts.length))}
      </h2>
      <p>{text.conflictHint}</p>
      <table className="table">
        <thead>
          <tr>
            <td />
            <th scope="col">{text.seen}</th>
            <th scope="col">{text.theirs}</th>
            <th scope="col">{text.mine}</th>
          </tr>
        </thead>
        <tbody>
          {conflicts.slice(0, mostShown).map((conflict) => (
            <ConflictRows key={conflict.id} conflict={conflict} productName={productName} />
          ))}
        </tbody>
      </table>
      {more > 0 && <p>{text.conflictMore(format.count(more))}</p>}
      <div className="tool-group">
        <button
          type="button"
          className="button"
          disabled={isBusy}
          onClick={() => (others.length === 0 ? leaveToOthers() : decide(others))}
        >
          {others.length === 0 ? text.keepTheirs : text.keepTheirsRest(format.count(others.length))}
        </button>
        <button
          type="button"
          className="button button-main"
          disabled={isBusy}
          onClick={() => (mine.length === 0 ? leaveToOthers() : decide(mine))}
        >
          {text.mineOnTop}
        </button>
      </div>
    </div>
  );
}
