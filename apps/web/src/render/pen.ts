/** A typeface at a size, CSS pixels; `css` is the same as one value of the style sheet's "font". */
export interface Font {
  readonly weight: number;
  readonly sizePx: number;
  readonly css: string;
}

/** The family of all words on the board, with what stands for it where it is not there. */
export const boardFamily = '"Barlow Semi Condensed", "Arial Narrow", sans-serif';

const font = (weight: number, sizePx: number): Font => ({
  weight,
  sizePx,
  css: `${weight} ${sizePx}px ${boardFamily}`,
});

export const boardFont = {
  mould: font(600, 14.5),
  small: font(500, 12.5),
  gate: font(600, 11),
  line: font(600, 15),
  day: font(600, 14),
  heading: font(600, 22),
} as const;

/** A diagonal hatch, moved right by `shiftPx` so that it travels with what it fills. */
export interface Hatch {
  readonly ground: string;
  readonly line: string;
  readonly stepPx: number;
  readonly linePx: number;
  readonly shiftPx: number;
}

/** What a shape is filled with. */
export type Paint = string | Hatch;

/**
 * What the board is drawn with, whatever it is drawn on: the few moves of a canvas that it needs, with hatches as values and
 * named parts. Lengths are CSS pixels.
 */
export interface Pen {
  fillStyle: Paint;
  strokeStyle: string;
  lineWidth: number;
  font: Font;
  globalAlpha: number;
  beginPath(): void;
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  closePath(): void;
  /** The upper half of a circle, from its left end to its right. */
  arch(x: number, y: number, radius: number): void;
  rect(x: number, y: number, width: number, height: number): void;
  /** `radius`: of all corners, or of each from the upper left clockwise. */
  roundRect(box: Box, radius: number | readonly number[]): void;
  fill(): void;
  stroke(): void;
  /** Keeps what follows inside the path until `restore`. */
  clip(): void;
  setLineDash(lengths: readonly number[]): void;
  fillRect(x: number, y: number, width: number, height: number): void;
  strokeRect(x: number, y: number, width: number, height: number): void;
  fillText(text: string, x: number, y: number): void;
  /** Width of a text in the pen's font. */
  textWidth(text: string): number;
  save(): void;
  restore(): void;
  translate(x: number, y: number): void;
  /** Turns what follows clockwise by an angle, radians. */
  rotate(angle: number): void;
  /** A soft shadow below what follows until `restore`; null: none from here on. */
  shadow(colour: string | null): void;
  /** What follows, to the matching end, is one thing with a name; only what can be read again keeps it. */
  beginPart(name: () => string): void;
  endPart(): void;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function fillBox(pen: Pen, box: Box, paint: Paint): void {
  pen.fillStyle = paint;
  pen.fillRect(box.x, box.y, box.width, box.height);
}

export function lineDown(pen: Pen, x: number, from: number, to: number): void {
  const at = Math.round(x) + 0.5;
  pen.beginPath();
  pen.moveTo(at, from);
  pen.lineTo(at, to);
  pen.stroke();
}

export function roundedPath(pen: Pen, box: Box, radius: number | readonly number[]): void {
  pen.beginPath();
  pen.roundRect(box, radius);
}
