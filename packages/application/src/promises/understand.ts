import { Order, instantOfLocalText, localDateText, parseLocalDate } from "@formweek/capacity-model";
import type { Product } from "@formweek/capacity-model";
import { type AppError, type FieldFault, appError } from "../errors.ts";
import { readWallClock } from "../import/cell-time.ts";
import { remedyOfOrderField } from "../import/order-remedies.ts";
import { isoInstant } from "../planning/iso-instant.ts";
import { type Result, ok, refused } from "../result.ts";
import type { Enquiry, UnderstoodEnquiry } from "./promise-answer.ts";
import { shown } from "./promise-refusals.ts";
import type { StandingDesk } from "./standing-desk.ts";

/** An enquiry read against the plant's records. */
export interface UnderstoodWish {
  readonly product: Product;
  readonly pieces: number;
  /** Instant, seconds; null: as soon as can be. */
  readonly wantedAt: number | null;
  readonly partsAllowed: boolean;
}

/** An order number that no book can have: it is trimmed there. It stands for the enquiry while it is asked for. */
export const ENQUIRY_ID = " enquiry";

/** Reads an enquiry, or names everything that is wrong with it at its fields. */
export function understand(enquiry: Enquiry, standing: StandingDesk, from: number): Result<UnderstoodWish> {
  const { finder, frame } = standing;
  const text = enquiry.product.trim();
  const product = finder.find(text);
  const nearest = product === undefined ? finder.nearest(text) : [];
  const wanted = wantedAt(enquiry.wanted, standing, from);
  const faults = [
    ...(product === undefined ? [unknownProduct(text, nearest)] : []),
    ...piecesFaults(enquiry.pieces),
    ...wanted.faults,
  ];
  if (product === undefined || faults.length > 0) {
    const refusal = refusalOf(faults);
    return refused(nearest.length === 0 ? refusal : { ...refusal, nearest });
  }
  const record = frame.plant.products.find(({ id }) => id === product.id) ?? product;
  return ok({
    product: record,
    pieces: enquiry.pieces,
    wantedAt: wanted.at,
    partsAllowed: enquiry.partsAllowed,
  });
}

/** The enquiry as it was understood. */
export function asUnderstood({ product, pieces, wantedAt, partsAllowed }: UnderstoodWish): UnderstoodEnquiry {
  return {
    productId: product.id,
    productName: product.name,
    pieces,
    wantedAt: wantedAt === null ? null : isoInstant(wantedAt),
    partsAllowed,
  };
}

/** What is wished for as an order of the plant. */
export function orderOf(
  { product, pieces, partsAllowed }: UnderstoodWish,
  more: Pick<Order, "customer" | "dueAt" | "earliestStartAt"> & { readonly id: string },
): Order {
  return Order.parse({
    id: more.id,
    customer: more.customer,
    productId: product.id,
    pieces,
    dueAt: more.dueAt,
    earliestStartAt: more.earliestStartAt,
    weight: 1,
    kind: "firm",
    underTolerance: 0,
    overTolerance: 0,
    partsAllowed,
  });
}

function unknownProduct(text: string, nearest: readonly string[]): FieldFault {
  const like = nearest.length === 0 ? "" : ` Did you mean ${nearest.join("; ")}?`;
  return {
    path: "product",
    problem:
      text === "" ? "No product is named." : `"${text}" is no product of this plant, or more than one.`,
    remedy: `Write the id or name of a product of the plant.${like}`,
  };
}

function piecesFaults(pieces: number): readonly FieldFault[] {
  const parsed = Order.shape.pieces.safeParse(pieces);
  if (parsed.success) return [];
  return [
    { path: "pieces", problem: `${pieces} is no number of pieces.`, remedy: remedyOfOrderField("pieces") },
  ];
}

interface Wanted {
  readonly at: number | null;
  readonly faults: readonly FieldFault[];
}

function wantedAt(text: string | null, { frame }: StandingDesk, from: number): Wanted {
  if (text === null || text.trim() === "") return { at: null, faults: [] };
  const { timeZone } = frame.plant;
  const fault = (problem: string, remedy: string): Wanted => ({
    at: null,
    faults: [{ path: "wanted", problem, remedy }],
  });
  const read = readWallClock(text.trim());
  if (!read.ok) return fault(`"${text}" is no day.`, "Write a day such as 2026-12-04, or leave it out.");
  const at = instantOfDay(read.value, timeZone);
  if (at === null) return fault(`"${text}" is no day of the calendar.`, "Correct the day or the month.");
  const { end } = frame.window;
  if (at < from)
    return fault(
      `${shown(timeZone, at)} is past: nothing can be ready before ${shown(timeZone, from)}.`,
      "Choose a later day, or leave it out to hear of the earliest.",
    );
  if (at > end)
    return fault(
      `${shown(timeZone, at)} lies after ${shown(timeZone, end)}, where the plan ends.`,
      "Choose a day within the plan, or leave it out to hear of the earliest.",
    );
  return { at, faults: [] };
}

/** A day without a time means its end: midnight after it. */
function instantOfDay(
  { date, time }: { readonly date: string; readonly time: string | null },
  timeZone: string,
): number | null {
  if (time !== null) return instantOfLocalText(timeZone, `${date}T${time}`);
  const day = parseLocalDate(date);
  return day === null ? null : instantOfLocalText(timeZone, `${localDateText(day + 1)}T00:00`);
}

function refusalOf(faults: readonly FieldFault[]): AppError {
  return appError(
    "invalid-input",
    {
      title: "This enquiry cannot be answered.",
      cause: faults.map(({ problem }) => problem).join(" "),
      remedy: [...new Set(faults.map(({ remedy }) => remedy))].join(" "),
    },
    faults,
  );
}
