import { pictureDensity } from "../kernels/picture-layout.ts";
import { CanvasPen } from "./canvas-pen.ts";
import { drawPicture, pictureSize, type Picture } from "./draw-picture.ts";
import type { Font } from "./pen.ts";
import { SvgPen } from "./svg-pen.ts";

/** An SVG document of a picture. `measure`: width of a text in a font, CSS pixels. */
export function svgOf(
  picture: Picture,
  measure: (font: Font, text: string) => number,
  language: string,
): string {
  const pen = new SvgPen(measure);
  const { widthPx, heightPx } = pictureSize(pen, picture);
  drawPicture(pen, picture);
  const { title, facts } = picture.words;
  return pen.written({ widthPx, heightPx, title, description: facts.join("\n"), language });
}

/** Measures texts as this browser draws them. */
export function browserMeasure(): (font: Font, text: string) => number {
  const context = document.createElement("canvas").getContext("2d");
  return (font, text) => {
    if (context === null) return text.length * font.sizePx * 0.5;
    context.font = font.css;
    return context.measureText(text).width;
  };
}

/** A PNG of a picture with two dots for each CSS pixel, fewer where it is very large; null where the browser cannot. */
export async function pngOf(picture: Picture): Promise<Blob | null> {
  const canvas = document.createElement("canvas");
  const context = canvas.getContext("2d", { alpha: false });
  if (context === null) return null;
  const { widthPx, heightPx } = pictureSize(new CanvasPen(context, 1), picture);
  const density = pictureDensity(widthPx, heightPx);
  canvas.width = Math.round(widthPx * density);
  canvas.height = Math.round(heightPx * density);
  drawPicture(new CanvasPen(context, density), picture);
  return new Promise((resolve) => canvas.toBlob(resolve, "image/png"));
}
