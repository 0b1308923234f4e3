import type { BookedOrder, OrderChange, OrderTerms } from "@formweek/contracts";

/** An order's own fields, without what the plan says about it. */
export function termsOf({
  id,
  customer,
  productId,
  pieces,
  dueAt,
  earliestStartAt,
  weight,
  kind,
  underTolerance,
  overTolerance,
  partsAllowed,
}: BookedOrder): OrderTerms {
  const shares = { underTolerance, overTolerance };
  return { id, customer, productId, pieces, dueAt, earliestStartAt, weight, kind, ...shares, partsAllowed };
}

export type OrderField = Exclude<keyof OrderTerms, "id">;

/** The fields in which two versions of an order differ. */
export function fieldsBetween(one: OrderTerms, other: OrderTerms): readonly OrderField[] {
  return orderFields.filter((field) => one[field] !== other[field]);
}

/** Null stands for an order that is not there. */
export function isSameOrder(one: OrderTerms | null, other: OrderTerms | null): boolean {
  if (one === null || other === null) return one === other;
  return one.id === other.id && fieldsBetween(one, other).length === 0;
}

/** Changes that take others back. */
export function turnedRound(changes: readonly OrderChange[]): readonly OrderChange[] {
  return changes.map(({ before, after }) => ({ before: after, after: before }));
}

export const orderFields: readonly OrderField[] = [
  "customer",
  "productId",
  "pieces",
  "dueAt",
  "earliestStartAt",
  "weight",
  "kind",
  "underTolerance",
  "overTolerance",
  "partsAllowed",
];
