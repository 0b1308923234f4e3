import type { Cell } from "../ports/table.ts";
import { plainText, read, unreadable, usable } from "./cell-text.ts";
import type { Reading } from "./cell-text.ts";

const GROUPED = /^[+-]?\d{1,3}([.,' ])\d{3}(?:\1\d{3})*$/;

/**
 * A whole number. Groups of three digits parted by comma, point, apostrophe or space are thousands: a piece has no
 * fraction, so "185.000" and "185,000" are both 185 000.
 */
export function readWhole(cell: Cell): Reading<number> {
  const number = readNumber(cell, true);
  if (!number.ok || Number.isSafeInteger(number.value)) return number;
  return unreadable("no-whole-number");
}

/** A number with or without a fraction; decimal comma or point. "1,234" could be either and is refused with a remedy. */
export function readDecimal(cell: Cell): Reading<number> {
  return readNumber(cell, false);
}

/** A share: "5 %" and 5 in a percent column mean 0.05; a number up to 1 without a sign is taken as it is. */
export function readShare(cell: Cell): Reading<number> {
  const text = plainText(cell);
  const percent = text.endsWith("%");
  const number = readNumber(percent ? text.slice(0, -1) : cell, false);
  if (!number.ok) return number;
  if (percent || number.value > 1) return read(number.value / 100);
  return number;
}

function readNumber(cell: Cell, whole: boolean): Reading<number> {
  const content = usable(cell);
  if (!content.ok) return content;
  if (typeof content.value === "number") {
    return Number.isFinite(content.value) ? read(content.value) : unreadable("no-number");
  }
  if (typeof content.value === "boolean" || typeof content.value === "object") {
    return unreadable("no-number");
  }
  return readNumberText(content.value, whole);
}

function readNumberText(raw: string, whole: boolean): Reading<number> {
  const text = raw.replace(/[\u00a0\u202f\u2009]/g, " ").trim();
  const grouped = GROUPED.exec(text);
  if (grouped !== null) {
    const mark = grouped[1] as string;
    const groups = text.split(mark).length - 1;
    if (whole || groups > 1 || mark === " " || mark === "'") return read(Number(text.split(mark).join("")));
    if (mark === ",") {
      return unreadable("thousand-or-fraction", {
        whole: text.replace(",", ""),
        fraction: text.replace(",", "."),
      });
    }
  }
  const normal = decimalPoint(text);
  if (normal === null || !/^[+-]?(\d+(\.\d*)?|\.\d+)(e[+-]?\d+)?$/i.test(normal)) {
    return unreadable(whole ? "no-count" : "no-number");
  }
  return read(Number(normal));
}

/** Text with the decimal mark as a point and thousands marks gone; null when the marks contradict each other. */
function decimalPoint(text: string): string | null {
  const compact = text.replace(/[ ']/g, "");
  const comma = compact.lastIndexOf(",");
  const point = compact.lastIndexOf(".");
  if (comma < 0) return compact;
  if (point < 0) return compact.indexOf(",") === comma ? compact.replace(",", ".") : null;
  const [decimal, thousands] = comma > point ? [",", "."] : [".", ","];
  const parts = compact.split(decimal);
  if (parts.length !== 2) return null;
  return `${(parts[0] ?? "").split(thousands).join("")}.${parts[1] ?? ""}`;
}
