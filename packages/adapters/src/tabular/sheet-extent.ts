/** Cells that a sheet may span, empty ones included: each takes memory once the sheet is laid out. */
const MOST_CELLS = 10_000_000;
/** Last row and column that a spreadsheet can have (ECMA-376 part 1, 18.3.1.73 and 18.3.1.13; from memory). */
const LAST_ROW = 1_048_576;
const LAST_COLUMN = 16_384;
/** Real tags of a workbook have some hundreds of characters. */
const LONGEST_TAG = 100_000;

/** Starts of rows and cells in the order of the sheet, and the addresses that they carry. */
const TOKENS = /<(?:[\w.-]+:)?(c|row)(?=[\s/>])|\sr\s*=\s*["']([^"']{0,40})/gi;

/**
 * How large a sheet would be once laid out, told from its XML alone: one cell far out makes millions of empty ones.
 * "broken" where an address lies outside of any spreadsheet.
 */
export function sheetExtent(xml: string): "sound" | "too large" | "broken" {
  let row = 0;
  let column = 0;
  let lastCellRow = 0;
  let lastColumn = 0;
  let laidOut = 0;
  for (const [, tag, address] of xml.matchAll(TOKENS)) {
    if (address !== undefined) {
      const place = placeOf(address);
      if (place === "outside") return "broken";
      if (place === null) continue;
      row = place.row;
      column = place.column ?? column;
    } else if (tag?.toLowerCase() === "row") {
      laidOut += column;
      row++;
      column = 0;
    } else {
      column++;
    }
    if (column > 0) lastCellRow = Math.max(lastCellRow, row);
    lastColumn = Math.max(lastColumn, column);
    if (laidOut + column > MOST_CELLS || lastCellRow * lastColumn > MOST_CELLS) return "too large";
  }
  return "sound";
}

/** True when no tag is so long that reading it would take for ever. */
export function tagsAreShort(xml: string): boolean {
  for (let open = xml.indexOf("<"); open >= 0;) {
    const close = xml.indexOf(">", open);
    if ((close < 0 ? xml.length : close) - open > LONGEST_TAG) return false;
    open = close < 0 ? -1 : xml.indexOf("<", close);
  }
  return true;
}

/** "7" or "B7"; null for text that is no address; escaped characters hide an address and count as outside. */
function placeOf(
  address: string,
): { readonly row: number; readonly column: number | null } | "outside" | null {
  if (address.includes("&")) return "outside";
  const found = /^([A-Z]*)(\d+)$/i.exec(address);
  if (found === null) return null;
  const [, letters = "", digits = ""] = found;
  const row = Number(digits);
  const column =
    letters === ""
      ? null
      : [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
  return row > LAST_ROW || (column ?? 0) > LAST_COLUMN ? "outside" : { row, column };
}
