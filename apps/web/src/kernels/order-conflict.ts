import type { OrderChange, OrderTerms } from "@formweek/contracts";
import { fieldsBetween, isSameOrder, type OrderField } from "./order-terms.ts";

/** An order that someone else changed between the planner's look and the planner's change. Null: not in the book. */
export interface OrderConflict {
  readonly id: string;
  readonly seen: OrderTerms | null;
  readonly mine: OrderTerms | null;
  readonly theirs: OrderTerms | null;
  /** Fields in which any two of the versions differ; empty where the order is not there in one of them. */
  readonly fields: readonly OrderField[];
}

type Book = ReadonlyMap<string, OrderTerms>;

/** Which of the changes stand on an order that the book has otherwise by now. */
export function conflictsOf(changes: readonly OrderChange[], book: Book): readonly OrderConflict[] {
  return changes.flatMap(({ before, after }) => {
    const id = idOf({ before, after });
    const theirs = book.get(id) ?? null;
    if (isSameOrder(theirs, before)) return [];
    return [{ id, seen: before, mine: after, theirs, fields: differing(before, after, theirs) }];
  });
}

/** The changes with their conflicts left as the others made them. */
export function withoutConflicts(changes: readonly OrderChange[], book: Book): readonly OrderChange[] {
  return changes.filter((change) => isSameOrder(book.get(idOf(change)) ?? null, change.before));
}

/** The changes made on top of what the others made: only the fields that the planner changed become the planner's. */
export function onTopOfTheirs(changes: readonly OrderChange[], book: Book): readonly OrderChange[] {
  return changes
    .map((change) => {
      const { before: seen, after: mine } = change;
      const theirs = book.get(idOf(change)) ?? null;
      if (seen === null || mine === null || theirs === null) return { before: theirs, after: mine };
      const own = Object.fromEntries(fieldsBetween(seen, mine).map((field) => [field, mine[field]]));
      return { before: theirs, after: { ...theirs, ...own } };
    })
    .filter(({ before, after }) => !isSameOrder(before, after));
}

/** Changes that were decided before earlier ones of the same planner were accepted, as they are after those. */
export function following(
  changes: readonly OrderChange[],
  earlier: readonly OrderChange[],
): readonly OrderChange[] {
  const made = new Map(earlier.flatMap(({ after }) => (after === null ? [] : [[after.id, after] as const])));
  return changes.flatMap((change) => (made.has(idOf(change)) ? onTopOfTheirs([change], made) : [change]));
}

function idOf({ before, after }: OrderChange): string {
  return before?.id ?? after?.id ?? "";
}

function differing(...versions: readonly (OrderTerms | null)[]): readonly OrderField[] {
  const [one, two, three] = versions.filter((version) => version !== null);
  if (one === undefined || two === undefined || three === undefined) return [];
  return [...new Set([...fieldsBetween(one, two), ...fieldsBetween(one, three)])];
}
