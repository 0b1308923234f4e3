import type { EditRefusal, EditRefusalCode } from "./plan-edit.ts";

/** What an edit was to change. */
export interface EditSubject {
  readonly orderId: string;
  readonly lot: number | null;
  readonly lineId: string | null;
}

/** A step of an edit: what it found, or why the edit cannot be. */
export type Found<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: EditRefusal };

/** What a refusal says, and the figures and reasons in it. */
type RefusalWords = Pick<
  EditRefusal,
  "text" | "remedy" | "reasons" | "heldLineId" | "leastPieces" | "unitPieces"
> & { readonly otherOrderId?: string };

export const found = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });

export function refuse(
  { orderId, lot, lineId }: EditSubject,
  code: EditRefusalCode,
  { otherOrderId = "", ...words }: RefusalWords,
): { readonly ok: false; readonly error: EditRefusal } {
  const other = otherOrderId === "" ? null : otherOrderId;
  return { ok: false, error: { code, orderId, lot, lineId, otherOrderId: other, ...words } };
}

/** An order's lot in words; lots are counted from 1 for people. */
export function sayLot({ orderId, lot }: { readonly orderId: string; readonly lot: number | null }): string {
  return lot === null || lot === 0 ? `Order ${orderId}` : `Order ${orderId} lot ${lot + 1}`;
}
