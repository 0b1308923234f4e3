/** Where the rows of the board lie, CSS pixels; y = 0 is the top of the canvas. */
export interface RowLayout {
  readonly labelWidthPx: number;
  readonly axisHeightPx: number;
  readonly rowHeightPx: number;
  readonly rows: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

export interface BoardSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** How close together things stand. */
export type Density = "roomy" | "compact";

const axisHeightPx = 52;

/** Between which heights rows share what is there. The lowest leaves runs the 24 px that a finger needs (WCAG 2.2, 2.5.8). */
const rowHeightsPx = {
  roomy: { lowest: 46, tallest: 80 },
  compact: { lowest: 38, tallest: 56 },
} as const;

/** Label columns of narrow boards: lines have short names, mould numbers and teams longer ones. */
const narrowLabelPx = { short: 72, long: 104 } as const;

/** What a layout goes by besides its size. */
export interface LayoutChoice {
  readonly names: "short" | "long";
  readonly density: Density;
}

const usualChoice: LayoutChoice = { names: "short", density: "roomy" };

/** Rows share the height that is there, within limits; narrow boards get a narrower label column. */
export function rowLayout(
  size: BoardSize,
  rows: number,
  { names, density }: LayoutChoice = usualChoice,
): RowLayout {
  const free = size.heightPx - axisHeightPx;
  const { lowest, tallest } = rowHeightsPx[density];
  const rowHeightPx = Math.floor(Math.min(tallest, Math.max(lowest, free / Math.max(1, rows))));
  const labelWidthPx = size.widthPx < 640 ? narrowLabelPx[names] : 122;
  return { labelWidthPx, axisHeightPx, rowHeightPx, rows, widthPx: size.widthPx, heightPx: size.heightPx };
}

/** Width of the time area. */
export function timeWidthPx(layout: RowLayout): number {
  return Math.max(1, layout.widthPx - layout.labelWidthPx);
}

/** How far the rows can be scrolled up; 0 when all fit. */
export function greatestScrollPx(layout: RowLayout): number {
  return Math.max(0, layout.rows * layout.rowHeightPx - (layout.heightPx - layout.axisHeightPx));
}

export function clampScroll(layout: RowLayout, scrollPx: number): number {
  return Math.min(greatestScrollPx(layout), Math.max(0, scrollPx));
}

export function rowTopPx(layout: RowLayout, scrollPx: number, row: number): number {
  return layout.axisHeightPx + row * layout.rowHeightPx - scrollPx;
}

/** Row under y, or null on the axis and below the last row. */
export function rowAtY(layout: RowLayout, scrollPx: number, y: number): number | null {
  if (y < layout.axisHeightPx) return null;
  const row = Math.floor((y - layout.axisHeightPx + scrollPx) / layout.rowHeightPx);
  return row >= 0 && row < layout.rows ? row : null;
}

/** Half-open range of rows in sight. */
export function rowsInSight(
  layout: RowLayout,
  scrollPx: number,
): { readonly from: number; readonly to: number } {
  const from = Math.max(0, Math.floor(scrollPx / layout.rowHeightPx));
  const to = Math.min(
    layout.rows,
    Math.ceil((scrollPx + layout.heightPx - layout.axisHeightPx) / layout.rowHeightPx),
  );
  return { from, to: Math.max(from, to) };
}

/** Scroll that brings a row wholly into sight with the least movement. */
export function scrollToRow(layout: RowLayout, scrollPx: number, row: number): number {
  const top = row * layout.rowHeightPx;
  const room = layout.heightPx - layout.axisHeightPx;
  if (top < scrollPx) return clampScroll(layout, top);
  if (top + layout.rowHeightPx > scrollPx + room) return clampScroll(layout, top + layout.rowHeightPx - room);
  return clampScroll(layout, scrollPx);
}
