import { boardFont, type Box, type Font, type Hatch, type Paint, type Pen } from "./pen.ts";
import { keptWidth } from "./text-widths.ts";

type Context = CanvasRenderingContext2D;

interface Style {
  readonly fill: Paint;
  readonly stroke: string;
  readonly line: number;
  readonly alpha: number;
  readonly font: Font;
  readonly setFont: Font;
}

/**
 * Draws on a canvas of `density` device pixels for each CSS pixel. Setting a canvas costs more than drawing a small shape, so it is
 * told of a paint, width or strength only when that is another, and of a font when words are drawn or measured in it.
 */
export class CanvasPen implements Pen {
  readonly #context: Context;
  readonly #density: number;
  #fillStyle: Paint = "#000";
  #strokeStyle = "#000";
  #lineWidth = 1;
  #globalAlpha = 1;
  #font: Font = boardFont.small;
  /** The font that the canvas has. */
  #setFont: Font = boardFont.small;
  readonly #saved: Style[] = [];

  constructor(context: Context, density: number) {
    this.#context = context;
    this.#density = density;
    context.setTransform(density, 0, 0, density, 0, 0);
    context.fillStyle = "#000";
    context.strokeStyle = "#000";
    context.lineWidth = this.#lineWidth;
    context.globalAlpha = this.#globalAlpha;
    context.font = this.#font.css;
  }

  get fillStyle(): Paint {
    return this.#fillStyle;
  }
  set fillStyle(paint: Paint) {
    if (paint === this.#fillStyle) return;
    this.#fillStyle = paint;
    this.#context.fillStyle =
      typeof paint === "string" ? paint : hatchPattern(this.#context, paint, this.#density);
  }
  get strokeStyle(): string {
    return this.#strokeStyle;
  }
  set strokeStyle(colour: string) {
    if (colour === this.#strokeStyle) return;
    this.#strokeStyle = colour;
    this.#context.strokeStyle = colour;
  }
  get lineWidth(): number {
    return this.#lineWidth;
  }
  set lineWidth(px: number) {
    if (px === this.#lineWidth) return;
    this.#lineWidth = px;
    this.#context.lineWidth = px;
  }
  get font(): Font {
    return this.#font;
  }
  set font(font: Font) {
    this.#font = font;
  }
  get globalAlpha(): number {
    return this.#globalAlpha;
  }
  set globalAlpha(alpha: number) {
    if (alpha === this.#globalAlpha) return;
    this.#globalAlpha = alpha;
    this.#context.globalAlpha = alpha;
  }

  beginPath(): void {
    this.#context.beginPath();
  }
  moveTo(x: number, y: number): void {
    this.#context.moveTo(x, y);
  }
  lineTo(x: number, y: number): void {
    this.#context.lineTo(x, y);
  }
  closePath(): void {
    this.#context.closePath();
  }
  arch(x: number, y: number, radius: number): void {
    this.#context.arc(x, y, radius, Math.PI, 0);
  }
  rect(x: number, y: number, width: number, height: number): void {
    this.#context.rect(x, y, width, height);
  }
  roundRect({ x, y, width, height }: Box, radius: number | readonly number[]): void {
    this.#context.roundRect(x, y, width, height, radius);
  }
  fill(): void {
    this.#context.fill();
  }
  stroke(): void {
    this.#context.stroke();
  }
  clip(): void {
    this.#context.clip();
  }
  setLineDash(lengths: readonly number[]): void {
    this.#context.setLineDash([...lengths]);
  }
  fillRect(x: number, y: number, width: number, height: number): void {
    this.#context.fillRect(x, y, width, height);
  }
  strokeRect(x: number, y: number, width: number, height: number): void {
    this.#context.strokeRect(x, y, width, height);
  }
  fillText(text: string, x: number, y: number): void {
    if (text === "") return;
    this.#useFont();
    this.#context.fillText(text, x, y);
  }
  textWidth(text: string): number {
    return keptWidth(this.#font, text, () => {
      this.#useFont();
      return this.#context.measureText(text).width;
    });
  }

  save(): void {
    this.#context.save();
    this.#saved.push({
      fill: this.#fillStyle,
      stroke: this.#strokeStyle,
      line: this.#lineWidth,
      alpha: this.#globalAlpha,
      font: this.#font,
      setFont: this.#setFont,
    });
  }
  restore(): void {
    this.#context.restore();
    const saved = this.#saved.pop();
    if (saved === undefined) return;
    this.#fillStyle = saved.fill;
    this.#strokeStyle = saved.stroke;
    this.#lineWidth = saved.line;
    this.#globalAlpha = saved.alpha;
    this.#font = saved.font;
    this.#setFont = saved.setFont;
  }
  translate(x: number, y: number): void {
    this.#context.translate(x, y);
  }
  rotate(angle: number): void {
    this.#context.rotate(angle);
  }
  shadow(colour: string | null): void {
    this.#context.shadowColor = colour ?? "transparent";
    this.#context.shadowBlur = 10 * this.#density;
    this.#context.shadowOffsetY = 3 * this.#density;
  }
  #useFont(): void {
    if (this.#font === this.#setFont) return;
    this.#setFont = this.#font;
    this.#context.font = this.#font.css;
  }
  beginPart(): void {
    // A canvas holds dots, not things.
  }
  endPart(): void {
    // As above.
  }
}

interface KeptPattern {
  readonly pattern: CanvasPattern | null;
  /** Where it is, device pixels; NaN before its first use. */
  shift: number;
}

const patterns = new Map<string, KeptPattern>();

/** Made once for each look and density; moved where its shift is another, by whole device pixels: between them it is drawn far slower. */
function hatchPattern(context: Context, hatch: Hatch, density: number): CanvasPattern | string {
  const key = `${hatch.ground}|${hatch.line}|${hatch.stepPx}|${hatch.linePx}|${density}`;
  let kept = patterns.get(key);
  if (kept === undefined) {
    kept = { pattern: madePattern(context, hatch, density), shift: Number.NaN };
    patterns.set(key, kept);
  }
  if (kept.pattern === null) return hatch.ground;
  const shift = Math.round((hatch.shiftPx % hatch.stepPx) * density);
  if (shift !== kept.shift) {
    kept.pattern.setTransform(new DOMMatrix([1 / density, 0, 0, 1 / density, shift / density, 0]));
    kept.shift = shift;
  }
  return kept.pattern;
}

function madePattern(context: Context, hatch: Hatch, density: number): CanvasPattern | null {
  const tile = document.createElement("canvas");
  const size = Math.max(2, Math.round(hatch.stepPx * density));
  tile.width = size;
  tile.height = size;
  const pen = tile.getContext("2d");
  if (pen === null) return null;
  pen.fillStyle = hatch.ground;
  pen.fillRect(0, 0, size, size);
  pen.strokeStyle = hatch.line;
  pen.lineWidth = hatch.linePx * density;
  pen.beginPath();
  for (const shift of [-size, 0, size]) {
    pen.moveTo(shift - 2, size + 2);
    pen.lineTo(shift + size + 2, -2);
  }
  pen.stroke();
  return context.createPattern(tile, "repeat");
}
