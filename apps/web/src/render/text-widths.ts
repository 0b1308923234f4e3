import type { Font } from "./pen.ts";

const widths = new Map<Font, Map<string, number>>();
const mostPerFont = 20_000;

/** Width of a text, measured once for each font; the store of a font is emptied when it grows large. */
export function keptWidth(font: Font, text: string, measure: () => number): number {
  let own = widths.get(font);
  if (own === undefined) {
    own = new Map();
    widths.set(font, own);
  }
  const known = own.get(text);
  if (known !== undefined) return known;
  if (own.size > mostPerFont) own.clear();
  const width = measure();
  own.set(text, width);
  return width;
}

/** Forget measured widths: the fonts have arrived. */
export function forgetTextWidths(): void {
  widths.clear();
}
