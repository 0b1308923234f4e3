import { fitLabel } from "../kernels/fit-label.ts";
import { drawPlan } from "./draw-board.ts";
import { drawLegend, legendOf, type LegendWords } from "./draw-legend.ts";
import type { Frame } from "./frame.ts";
import { boardFont, fillBox, type Font, type Pen } from "./pen.ts";

/** What stands around the board in a picture that leaves the app. */
export interface PictureWords {
  readonly title: string;
  /** What is shown, line by line below the title. */
  readonly facts: readonly string[];
  readonly legend: LegendWords;
}

export interface Picture {
  readonly frame: Frame;
  readonly words: PictureWords;
}

const edgePx = 20;
const titlePx = 40;
const factPx = 20;

const headPx = ({ facts }: PictureWords): number => titlePx + facts.length * factPx + 12;

/** Size of a picture, CSS pixels; `pen` measures its words. */
export function pictureSize(
  pen: Pen,
  { frame, words }: Picture,
): { readonly widthPx: number; readonly heightPx: number } {
  const { widthPx, heightPx } = frame.layout;
  const legend = legendOf(pen, words.legend, widthPx - 2 * edgePx);
  return { widthPx, heightPx: headPx(words) + heightPx + 14 + legend.heightPx + 6 };
}

/** The plan under a heading, over the meaning of its marks. */
export function drawPicture(pen: Pen, picture: Picture): void {
  const { frame, words } = picture;
  const { palette, layout } = frame;
  fillBox(pen, { x: 0, y: 0, ...sizeOf(pen, picture) }, palette.leaf);
  const write = (text: string, font: Font, y: number): void => {
    pen.font = font;
    pen.fillText(
      fitLabel(text, layout.widthPx - 2 * edgePx, (part) => pen.textWidth(part)),
      edgePx,
      y,
    );
  };
  pen.fillStyle = palette.ink;
  write(words.title, boardFont.heading, titlePx - 8);
  pen.fillStyle = palette.soft;
  words.facts.forEach((fact, place) => write(fact, boardFont.mould, titlePx + place * factPx + 14));

  pen.save();
  pen.translate(0, headPx(words));
  pen.beginPath();
  pen.rect(0, 0, layout.widthPx, layout.heightPx);
  pen.clip();
  drawPlan(pen, frame);
  pen.restore();

  pen.save();
  pen.translate(edgePx, headPx(words) + layout.heightPx + 14);
  drawLegend(pen, palette, legendOf(pen, words.legend, layout.widthPx - 2 * edgePx));
  pen.restore();
}

function sizeOf(pen: Pen, picture: Picture): { readonly width: number; readonly height: number } {
  const { widthPx, heightPx } = pictureSize(pen, picture);
  return { width: widthPx, height: heightPx };
}
