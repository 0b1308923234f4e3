import type { Cell } from "../ports/table.ts";
import { faultWords } from "./import-words.ts";
import type { FaultWords, ImportFaultCode, ImportFaultValues } from "./import-words.ts";

/** A value read from a cell, or what is wrong with it and what to write instead. */
export type Reading<T> =
  | { readonly ok: true; readonly value: T; readonly warning?: FaultWords }
  | ({ readonly ok: false } & FaultWords);

export const read = <T>(value: T): Reading<T> => ({ ok: true, value });

export const unreadable = <T>(code: ImportFaultCode, values?: ImportFaultValues): Reading<T> => ({
  ok: false,
  ...faultWords(code, values),
});

/** True for a cell without content: nothing, or white space alone. */
export function isBlank(cell: Cell | undefined): boolean {
  return cell === undefined || cell === null || (typeof cell === "string" && cell.trim() === "");
}

/** What a person sees in the cell, clipped to 60 characters, for reports. */
export function shownText(cell: Cell | undefined): string {
  const text = plainText(cell);
  return text.length > 60 ? `${text.slice(0, 59)}…` : text;
}

/** A cell's content as text; formulas without a stored value and errors give their mark. */
export function plainText(cell: Cell | undefined): string {
  if (cell === undefined || cell === null) return "";
  if (typeof cell === "string") return cell.trim();
  if (typeof cell === "number" || typeof cell === "boolean") return String(cell);
  switch (cell.kind) {
    case "date":
      return cell.wallClock;
    case "formula":
      return "(formula)";
    case "error":
      return cell.text;
  }
}

/** Refuses cells that hold no value of any kind: spreadsheet errors and formulas that were never computed. */
export function usable(cell: Cell): Reading<Exclude<Cell, { readonly kind: "formula" | "error" }>> {
  if (typeof cell === "object" && cell !== null) {
    if (cell.kind === "error") return unreadable("spreadsheet-error", { mark: cell.text });
    if (cell.kind === "formula") return unreadable("formula-not-computed");
    return read(cell);
  }
  return read(cell);
}

/** Export writes an apostrophe before text that a spreadsheet would run as a formula; this takes it off again. */
export function withoutFormulaGuard(text: string): string {
  return /^'+[=+\-@\t\r]/.test(text) ? text.slice(1) : text;
}
