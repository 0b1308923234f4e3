import type { Format } from "../../format/format.ts";
import type { Text } from "../../text/text.ts";

/** By how much something comes later or earlier, in words; seconds. */
export function shiftWords(
  laterBy: number,
  { text, format }: { readonly text: Text["versions"]; readonly format: Format },
): string {
  if (laterBy === 0) return text.sameStart;
  return laterBy > 0 ? text.later(format.span(laterBy)) : text.earlier(format.span(laterBy));
}

/** Rows of a table that are shown; more would be neither read nor quick. */
export const mostRows = 300;
