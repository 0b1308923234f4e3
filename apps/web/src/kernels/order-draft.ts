import type { OrderTerms } from "@formweek/contracts";
import { secondsOf } from "./board-plan.ts";
import type { OrderField } from "./order-terms.ts";
import { instantOfWallText, wallText, wireText } from "./wall-text.ts";
import type { ZoneClock } from "./zone-clock.ts";

/** An order as it stands in the fields of a form: texts, times by the plant's clock, tolerances in percent. */
export type OrderDraft = Readonly<Record<Exclude<OrderField, "partsAllowed">, string>> & {
  readonly partsAllowed: boolean;
};

export function draftOf(terms: OrderTerms, clock: ZoneClock): OrderDraft {
  const { earliestStartAt } = terms;
  return {
    customer: terms.customer,
    productId: terms.productId,
    pieces: `${terms.pieces}`,
    dueAt: wallText(clock, secondsOf(terms.dueAt)),
    earliestStartAt: earliestStartAt === null ? "" : wallText(clock, secondsOf(earliestStartAt)),
    weight: `${terms.weight}`,
    kind: terms.kind,
    underTolerance: percentText(terms.underTolerance),
    overTolerance: percentText(terms.overTolerance),
    partsAllowed: terms.partsAllowed,
  };
}

export type DraftReading =
  | { readonly kind: "read"; readonly terms: OrderTerms }
  | { readonly kind: "faulty"; readonly fields: readonly OrderField[] };

/**
 * What a draft says, or the fields that cannot be read. A field that was not touched keeps the order's own value, also
 * where its text shows less than that, as seconds of a time.
 */
export function readDraft(
  order: OrderTerms,
  draft: OrderDraft,
  clock: ZoneClock,
  untouched: Partial<OrderDraft> = draftOf(order, clock),
): DraftReading {
  const faulty: OrderField[] = [];
  const read = <Field extends OrderField>(
    field: Field,
    reading: OrderTerms[Field] | undefined,
  ): OrderTerms[Field] => {
    if (draft[field] === untouched[field]) return order[field];
    if (reading === undefined) faulty.push(field);
    return reading ?? order[field];
  };
  const wall = (text: string): string | undefined => {
    const instant = instantOfWallText(clock, text);
    return instant === null ? undefined : wireText(instant);
  };
  const earliest = draft.earliestStartAt === "" ? null : wall(draft.earliestStartAt);
  const terms: OrderTerms = {
    id: order.id,
    customer: read("customer", textIn(draft.customer)),
    productId: read("productId", textIn(draft.productId)),
    pieces: read("pieces", wholeIn(draft.pieces)),
    dueAt: read("dueAt", wall(draft.dueAt)),
    earliestStartAt: earliest === null ? null : read("earliestStartAt", earliest),
    weight: read("weight", within(decimalIn(draft.weight), 1000)),
    kind: read("kind", draft.kind === "firm" || draft.kind === "forecast" ? draft.kind : undefined),
    underTolerance: read("underTolerance", shareIn(draft.underTolerance)),
    overTolerance: read("overTolerance", shareIn(draft.overTolerance)),
    partsAllowed: draft.partsAllowed,
  };
  const { earliestStartAt, dueAt } = terms;
  if (earliestStartAt !== null && earliestStartAt > dueAt && faulty.length === 0)
    faulty.push(draft.earliestStartAt === untouched.earliestStartAt ? "dueAt" : "earliestStartAt");
  return faulty.length > 0 ? { kind: "faulty", fields: faulty } : { kind: "read", terms };
}

/** Whole pieces, with or without marks between thousands. */
export function wholeIn(text: string): number | undefined {
  const bare = text.trim();
  const isGrouped = /^\d{1,3}(?:([.,'’\s])\d{3})(?:\1\d{3})*$/u.test(bare);
  if (!isGrouped && !/^\d+$/.test(bare)) return undefined;
  const value = Number(bare.replace(/\D/g, ""));
  return value >= 1 && value <= 1_000_000_000 ? value : undefined;
}

/** A number with a point or a comma before its decimals. */
export function decimalIn(text: string): number | undefined {
  const bare = text.trim().replace(",", ".");
  return /^\d+(?:\.\d+)?$/.test(bare) ? Number(bare) : undefined;
}

function shareIn(text: string): number | undefined {
  const percent = within(decimalIn(text.replace("%", "")), 100);
  return percent === undefined ? undefined : Number((percent / 100).toFixed(6));
}

function within(value: number | undefined, most: number): number | undefined {
  return value !== undefined && value <= most ? value : undefined;
}

function textIn(text: string): string | undefined {
  const bare = text.trim();
  return bare.length >= 1 && bare.length <= 120 ? bare : undefined;
}

function percentText(share: number): string {
  return `${Number((share * 100).toFixed(4))}`;
}
