/** Text cut to a width: whole, shortened with an ellipsis, or empty when not even three letters fit. */
export function fitLabel(text: string, widthPx: number, widthOf: (text: string) => number): string {
  if (widthOf(text) <= widthPx) return text;
  let low = 0;
  let high = text.length;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (widthOf(`${text.slice(0, middle).trimEnd()}…`) <= widthPx) low = middle;
    else high = middle - 1;
  }
  return low < 3 ? "" : `${text.slice(0, low).trimEnd()}…`;
}
