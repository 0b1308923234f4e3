import type { PromiseEnquiry } from "@formweek/contracts";

/** An enquiry as it is typed. */
export interface EnquiryDraft {
  /** Name or id, or the beginning of one. */
  readonly product: string;
  readonly pieces: string;
  /** "2026-12-04", or nothing: as soon as can be. */
  readonly day: string;
  /** "06:00", or nothing: the end of the day. */
  readonly time: string;
  readonly partsAllowed: boolean;
}

export const emptyDraft: EnquiryDraft = { product: "", pieces: "", day: "", time: "", partsAllowed: false };

const mostPieces = 1_000_000_000;

/**
 * Pieces as people type them: "40000", "40 000", "40,000", "40.000", "40k", "1.2m"; null: no such number. A sign before three
 * figures parts thousands; else it is a decimal sign, which only makes sense before "k" or "m".
 */
export function readPieces(typed: string): number | null {
  const plain = typed.replace(/[\s\u00a0\u202f'’]/gu, "").toLowerCase();
  const parts = /^(\d{1,3}(?:[.,]\d{3})+|\d+(?:[.,]\d{1,3})?)([km]?)$/u.exec(plain);
  if (parts === null) return null;
  const [, figures = "", unit = ""] = parts;
  if (unit === "" && /[.,]\d{1,2}$/u.test(figures)) return null;
  const isGrouped = unit === "" && /^\d{1,3}(?:[.,]\d{3})+$/u.test(figures);
  const number = Number(isGrouped ? figures.replace(/[.,]/gu, "") : figures.replace(",", "."));
  const pieces = Math.round(number * { "": 1, k: 1_000, m: 1_000_000 }[unit as "" | "k" | "m"] * 1000) / 1000;
  return Number.isInteger(pieces) && pieces >= 1 && pieces <= mostPieces ? pieces : null;
}

/** The enquiry that a draft says; null while it is not whole. */
export function enquiryOf(draft: EnquiryDraft, productId: string | null): PromiseEnquiry | null {
  const pieces = readPieces(draft.pieces);
  if (productId === null || pieces === null) return null;
  const wanted = draft.day === "" ? null : draft.time === "" ? draft.day : `${draft.day}T${draft.time}`;
  return { product: productId, pieces, wanted, partsAllowed: draft.partsAllowed };
}

/** Reads what an address asks for. What it does not understand counts as not said. */
export function readEnquiryAddress(address: URLSearchParams): EnquiryDraft {
  const [, day = "", time = ""] =
    /^(\d{4}-\d{2}-\d{2})(?:T(\d{2}:\d{2}))?$/u.exec(address.get("wanted") ?? "") ?? [];
  return {
    product: address.get("product") ?? "",
    pieces: address.get("pieces") ?? "",
    day,
    time,
    partsAllowed: address.get("parts") === "1",
  };
}

/** The address of a draft: `before` with the parameters of an enquiry set anew, and all others as they were. */
export function writeEnquiryAddress(draft: EnquiryDraft, before: URLSearchParams): URLSearchParams {
  const next = new URLSearchParams(before);
  const set = (name: string, value: string): void => {
    if (value === "") next.delete(name);
    else next.set(name, value);
  };
  set("product", draft.product);
  set("pieces", draft.pieces);
  set("wanted", draft.day === "" || draft.time === "" ? draft.day : `${draft.day}T${draft.time}`);
  set("parts", draft.partsAllowed ? "1" : "");
  return next;
}
