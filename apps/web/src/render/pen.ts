/** Small drawing moves shared by the parts of the board. Lengths are CSS pixels. */
export type Pen = CanvasRenderingContext2D;

export const boardFont = {
  mould: '600 14.5px "Barlow Semi Condensed", "Arial Narrow", sans-serif',
  small: '500 12.5px "Barlow Semi Condensed", "Arial Narrow", sans-serif',
  gate: '600 11px "Barlow Semi Condensed", "Arial Narrow", sans-serif',
  line: '600 15px "Barlow Semi Condensed", "Arial Narrow", sans-serif',
  day: '600 14px "Barlow Semi Condensed", "Arial Narrow", sans-serif',
} as const;

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function fillBox(pen: Pen, box: Box, colour: string): void {
  pen.fillStyle = colour;
  pen.fillRect(box.x, box.y, box.width, box.height);
}

export function lineDown(pen: Pen, x: number, from: number, to: number): void {
  const at = Math.round(x) + 0.5;
  pen.beginPath();
  pen.moveTo(at, from);
  pen.lineTo(at, to);
  pen.stroke();
}

export function roundedPath(pen: Pen, box: Box, radius: number | number[]): void {
  pen.beginPath();
  pen.roundRect(box.x, box.y, box.width, box.height, radius);
}

const widths = new Map<string, number>();

/** Width of a text in the pen's font; measured once, the store is emptied when it grows large. */
export function textWidth(pen: Pen, text: string): number {
  const key = `${pen.font}|${text}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  if (widths.size > 20_000) widths.clear();
  const width = pen.measureText(text).width;
  widths.set(key, width);
  return width;
}

/** Forget measured widths: the fonts have arrived. */
export function forgetTextWidths(): void {
  widths.clear();
}

const hatches = new Map<string, CanvasPattern | null>();

export interface Hatch {
  readonly ground: string;
  readonly line: string;
  readonly stepPx: number;
  readonly linePx: number;
}

/** A diagonal hatch as a fill, moved right by `shiftPx` so that it travels with what it fills. */
export function hatchFill(pen: Pen, hatch: Hatch, shiftPx: number): CanvasPattern | string {
  const density = pen.getTransform().a;
  const fill = hatchPattern(pen, hatch, density);
  if (fill instanceof CanvasPattern) {
    fill.setTransform(new DOMMatrix().translate(shiftPx % hatch.stepPx, 0).scale(1 / density));
  }
  return fill;
}

/** Made once for each look and pixel density. */
function hatchPattern(pen: Pen, hatch: Hatch, density: number): CanvasPattern | string {
  const key = `${hatch.ground}|${hatch.line}|${hatch.stepPx}|${hatch.linePx}|${density}`;
  const known = hatches.get(key);
  if (known !== undefined) return known ?? hatch.ground;
  const tile = document.createElement("canvas");
  const size = Math.max(2, Math.round(hatch.stepPx * density));
  tile.width = size;
  tile.height = size;
  const tilePen = tile.getContext("2d");
  if (tilePen === null) return hatch.ground;
  tilePen.fillStyle = hatch.ground;
  tilePen.fillRect(0, 0, size, size);
  tilePen.strokeStyle = hatch.line;
  tilePen.lineWidth = hatch.linePx * density;
  tilePen.beginPath();
  for (const shift of [-size, 0, size]) {
    tilePen.moveTo(shift - 2, size + 2);
    tilePen.lineTo(shift + size + 2, -2);
  }
  tilePen.stroke();
  const pattern = pen.createPattern(tile, "repeat");
  hatches.set(key, pattern);
  return pattern ?? hatch.ground;
}
