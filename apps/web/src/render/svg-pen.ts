import { boardFamily, boardFont, type Box, type Font, type Hatch, type Paint, type Pen } from "./pen.ts";
import { keptWidth } from "./text-widths.ts";

/** What `save` keeps. */
interface Style {
  readonly fillStyle: Paint;
  readonly strokeStyle: string;
  readonly lineWidth: number;
  readonly font: Font;
  readonly globalAlpha: number;
  readonly dash: readonly number[];
}

/** What an SVG document says of itself. */
export interface SvgAbout {
  readonly widthPx: number;
  readonly heightPx: number;
  /** A short name, and what a reader who does not see it should know. */
  readonly title: string;
  readonly description: string;
  /** Language of the words, as a BCP 47 tag. */
  readonly language: string;
}

/** Writes an SVG document: shapes as shapes, words as text that can be read, searched and copied. */
export class SvgPen implements Pen {
  fillStyle: Paint = "#000";
  strokeStyle = "#000";
  lineWidth = 1;
  font: Font = boardFont.small;
  globalAlpha = 1;
  readonly #measure: (font: Font, text: string) => number;
  #dash: readonly number[] = [];
  readonly #defs: string[] = [];
  readonly #body: string[] = [];
  readonly #hatches = new Map<string, string>();
  readonly #saved: { readonly style: Style; readonly groups: number }[] = [];
  /** Groups opened since the last `save`. */
  #groups = 0;
  #path = "";

  /** `measure`: width of a text in a font, CSS pixels. */
  constructor(measure: (font: Font, text: string) => number) {
    this.#measure = measure;
  }

  beginPath(): void {
    this.#path = "";
  }
  moveTo(x: number, y: number): void {
    this.#path += `M${at(x)} ${at(y)}`;
  }
  lineTo(x: number, y: number): void {
    this.#path += `L${at(x)} ${at(y)}`;
  }
  closePath(): void {
    this.#path += "Z";
  }
  arch(x: number, y: number, radius: number): void {
    const start = this.#path === "" ? "M" : "L";
    this.#path += `${start}${at(x - radius)} ${at(y)}A${at(radius)} ${at(radius)} 0 0 1 ${at(x + radius)} ${at(y)}`;
  }
  rect(x: number, y: number, width: number, height: number): void {
    this.#path += `M${at(x)} ${at(y)}h${at(width)}v${at(height)}h${at(-width)}Z`;
  }
  roundRect({ x, y, width, height }: Box, radius: number | readonly number[]): void {
    const [upper = 0, , lower = upper] = typeof radius === "number" ? [radius] : radius;
    const most = Math.min(width, height) / 2;
    const [a, b] = [Math.min(upper, most), Math.min(lower, most)];
    const arc = (r: number, dx: number, dy: number): string =>
      r === 0 ? "" : `a${at(r)} ${at(r)} 0 0 1 ${at(dx)} ${at(dy)}`;
    this.#path +=
      `M${at(x + a)} ${at(y)}h${at(width - 2 * a)}${arc(a, a, a)}v${at(height - a - b)}${arc(b, -b, b)}` +
      `h${at(2 * b - width)}${arc(b, -b, -b)}v${at(a + b - height)}${arc(a, a, -a)}Z`;
  }
  fill(): void {
    this.#shape(`path d="${this.#path}"`, this.#filled());
  }
  stroke(): void {
    this.#shape(`path d="${this.#path}"`, this.#stroked());
  }
  clip(): void {
    const id = `c${this.#defs.length}`;
    this.#defs.push(`<clipPath id="${id}"><path d="${this.#path}"/></clipPath>`);
    this.#open(`clip-path="url(#${id})"`);
  }
  setLineDash(lengths: readonly number[]): void {
    this.#dash = lengths;
  }
  fillRect(x: number, y: number, width: number, height: number): void {
    if (width > 0 && height > 0) this.#shape(rectOf(x, y, width, height), this.#filled());
  }
  strokeRect(x: number, y: number, width: number, height: number): void {
    this.#shape(rectOf(x, y, width, height), this.#stroked());
  }
  fillText(text: string, x: number, y: number): void {
    if (text === "") return;
    const { weight, sizePx } = this.font;
    // Where the font is another, the words keep the room that they were given.
    const room = `textLength="${at(this.textWidth(text))}" lengthAdjust="spacingAndGlyphs"`;
    const place = `x="${at(x)}" y="${at(y)}" font-size="${sizePx}" font-weight="${weight}"`;
    this.#body.push(`<text ${place} ${room}${this.#filled()}>${escaped(text)}</text>`);
  }
  textWidth(text: string): number {
    return keptWidth(this.font, text, () => this.#measure(this.font, text));
  }

  save(): void {
    const { fillStyle, strokeStyle, lineWidth, font, globalAlpha } = this;
    const style = { fillStyle, strokeStyle, lineWidth, font, globalAlpha, dash: this.#dash };
    this.#saved.push({ style, groups: this.#groups });
    this.#groups = 0;
  }
  restore(): void {
    const saved = this.#saved.pop();
    if (saved === undefined) return;
    for (; this.#groups > 0; this.#groups -= 1) this.#body.push("</g>");
    const { dash, ...style } = saved.style;
    Object.assign(this, style);
    this.#dash = dash;
    this.#groups = saved.groups;
  }
  translate(x: number, y: number): void {
    this.#open(`transform="translate(${at(x)} ${at(y)})"`);
  }
  rotate(angle: number): void {
    this.#open(`transform="rotate(${at((angle * 180) / Math.PI)})"`);
  }
  shadow(): void {
    // Shadows are of things that are moved; a document holds none.
  }
  beginPart(name: () => string): void {
    this.#body.push(`<g><title>${escaped(name())}</title>`);
  }
  endPart(): void {
    this.#body.push("</g>");
  }

  /** The whole document of what was drawn. */
  written({ widthPx, heightPx, title, description, language }: SvgAbout): string {
    const size = `width="${at(widthPx)}" height="${at(heightPx)}" viewBox="0 0 ${at(widthPx)} ${at(heightPx)}"`;
    return [
      '<?xml version="1.0" encoding="UTF-8"?>',
      `<svg xmlns="http://www.w3.org/2000/svg" ${size} xml:lang="${escaped(language)}" role="img" aria-labelledby="formweek-title formweek-description" font-family="${escaped(boardFamily)}">`,
      `<title id="formweek-title">${escaped(title)}</title>`,
      `<desc id="formweek-description">${escaped(description)}</desc>`,
      `<defs>${this.#defs.join("")}</defs>`,
      ...this.#body,
      "</svg>",
      "",
    ].join("\n");
  }

  #open(attribute: string): void {
    this.#body.push(`<g ${attribute}>`);
    this.#groups += 1;
  }
  #shape(shape: string, style: string): void {
    this.#body.push(`<${shape}${style}/>`);
  }
  #filled(): string {
    const paint = typeof this.fillStyle === "string" ? this.fillStyle : this.#hatchAddress(this.fillStyle);
    return ` fill="${escaped(paint)}"${this.globalAlpha < 1 ? ` fill-opacity="${at(this.globalAlpha)}"` : ""}`;
  }
  #stroked(): string {
    const alpha = this.globalAlpha < 1 ? ` stroke-opacity="${at(this.globalAlpha)}"` : "";
    const dash = this.#dash.length > 0 ? ` stroke-dasharray="${this.#dash.map(at).join(" ")}"` : "";
    return ` fill="none" stroke="${escaped(this.strokeStyle)}" stroke-width="${at(this.lineWidth)}"${dash}${alpha}`;
  }
  #hatchAddress({ ground, line, stepPx, linePx, shiftPx }: Hatch): string {
    const shift = at(((shiftPx % stepPx) + stepPx) % stepPx);
    const key = `${ground}|${line}|${stepPx}|${linePx}|${shift}`;
    const known = this.#hatches.get(key) ?? `url(#h${this.#defs.length})`;
    if (!this.#hatches.has(key)) {
      const tile = `width="${stepPx}" height="${stepPx}" patternUnits="userSpaceOnUse" patternTransform="translate(${shift})"`;
      const lines = [-stepPx, 0, stepPx].map((x) => `M${x - 2} ${stepPx + 2}L${x + stepPx + 2} -2`).join("");
      this.#defs.push(
        `<pattern id="h${this.#defs.length}" ${tile}><rect width="${stepPx}" height="${stepPx}" fill="${escaped(ground)}"/>` +
          `<path d="${lines}" stroke="${escaped(line)}" stroke-width="${linePx}"/></pattern>`,
      );
      this.#hatches.set(key, known);
    }
    return known;
  }
}

function rectOf(x: number, y: number, width: number, height: number): string {
  return `rect x="${at(x)}" y="${at(y)}" width="${at(width)}" height="${at(height)}"`;
}

/** A length with two decimal places at most. */
function at(value: number): string {
  return `${Math.round(value * 100) / 100}`;
}

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
};

/** Text as XML 1.0 takes it: markup as entities, characters that it forbids (section 2.2, Char) replaced by U+FFFD. */
function escaped(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, "\uFFFD")
    .replace(/[&<>"]/g, (sign) => entities[sign] ?? sign);
}
