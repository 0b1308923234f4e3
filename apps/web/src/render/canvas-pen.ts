import { boardFont, type Box, type Font, type Hatch, type Paint, type Pen } from "./pen.ts";
import { keptWidth } from "./text-widths.ts";

type Context = CanvasRenderingContext2D;

/** Draws on a canvas of `density` device pixels for each CSS pixel. */
export class CanvasPen implements Pen {
  readonly #context: Context;
  readonly #density: number;
  #fillStyle: Paint = "#000";
  #strokeStyle = "#000";
  #font: Font = boardFont.small;
  readonly #saved: [fill: Paint, stroke: string, font: Font][] = [];

  constructor(context: Context, density: number) {
    this.#context = context;
    this.#density = density;
    context.setTransform(density, 0, 0, density, 0, 0);
    context.font = this.#font.css;
  }

  get fillStyle(): Paint {
    return this.#fillStyle;
  }
  set fillStyle(paint: Paint) {
    this.#fillStyle = paint;
    this.#context.fillStyle =
      typeof paint === "string" ? paint : hatchPattern(this.#context, paint, this.#density);
  }
  get strokeStyle(): string {
    return this.#strokeStyle;
  }
  set strokeStyle(colour: string) {
    this.#strokeStyle = colour;
    this.#context.strokeStyle = colour;
  }
  get lineWidth(): number {
    return this.#context.lineWidth;
  }
  set lineWidth(px: number) {
    this.#context.lineWidth = px;
  }
  get font(): Font {
    return this.#font;
  }
  set font(font: Font) {
    if (font === this.#font) return;
    this.#font = font;
    this.#context.font = font.css;
  }
  get globalAlpha(): number {
    return this.#context.globalAlpha;
  }
  set globalAlpha(alpha: number) {
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
    this.#context.roundRect(x, y, width, height, typeof radius === "number" ? radius : [...radius]);
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
    this.#context.fillText(text, x, y);
  }
  textWidth(text: string): number {
    return keptWidth(this.#font, text, () => this.#context.measureText(text).width);
  }

  save(): void {
    this.#context.save();
    this.#saved.push([this.#fillStyle, this.#strokeStyle, this.#font]);
  }
  restore(): void {
    this.#context.restore();
    const saved = this.#saved.pop();
    if (saved !== undefined) [this.#fillStyle, this.#strokeStyle, this.#font] = saved;
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
  beginPart(): void {
    // A canvas holds dots, not things.
  }
  endPart(): void {
    // As above.
  }
}

const patterns = new Map<string, CanvasPattern | null>();

/** Made once for each look and density; the shift alone is set for each use. */
function hatchPattern(context: Context, hatch: Hatch, density: number): CanvasPattern | string {
  const key = `${hatch.ground}|${hatch.line}|${hatch.stepPx}|${hatch.linePx}|${density}`;
  let pattern = patterns.get(key);
  if (pattern === undefined) {
    pattern = madePattern(context, hatch, density);
    patterns.set(key, pattern);
  }
  if (pattern === null) return hatch.ground;
  pattern.setTransform(new DOMMatrix().translate(hatch.shiftPx % hatch.stepPx, 0).scale(1 / density));
  return pattern;
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
