import { readPieces } from "./enquiry-draft.ts";

const columns = ["product", "pieces", "wanted", "parts allowed"] as const;

/** The header that rows of enquiries lack, as long as their second column starts with a number of pieces; null: they have one. */
export function missingEnquiryHeader(rows: readonly (readonly string[])[]): readonly string[] | null {
  const [first] = rows;
  if (first === undefined || readPieces(first[1] ?? "") === null) return null;
  return columns.slice(0, first.length);
}
