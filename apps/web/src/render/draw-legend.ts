import { flag } from "./draw-lateness.ts";
import { drawFrozenMark } from "./draw-frozen.ts";
import { drawLock } from "./draw-lock.ts";
import { drawTag } from "./draw-tag.ts";
import type { Palette } from "./palette.ts";
import { boardFont, fillBox, lineDown, roundedPath, type Pen } from "./pen.ts";

/** What the marks of a board mean, in the reader's language. */
export interface LegendWords {
  readonly run: string;
  readonly clear: string;
  readonly late: string;
  readonly change: string;
  readonly pause: string;
  readonly closed: string;
  readonly due: string;
  readonly held: string;
  readonly frozen: string;
  readonly promised: string;
  readonly now: string;
}

type Mark = keyof LegendWords;
const marks: readonly Mark[] = [
  "run",
  "clear",
  "late",
  "change",
  "pause",
  "closed",
  "due",
  "held",
  "frozen",
  "promised",
  "now",
];

const markPx = 36;
const markHeightPx = 24;
const rowPx = 34;
const gapPx = 26;

/** A mark with its words and where they stand. */
export interface LegendEntry {
  readonly mark: Mark;
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

export interface Legend {
  readonly entries: readonly LegendEntry[];
  readonly heightPx: number;
}

/** Lays the marks out in rows of a width; y = 0 is the legend's upper edge. */
export function legendOf(pen: Pen, words: LegendWords, widthPx: number): Legend {
  pen.font = boardFont.small;
  let x = 0;
  let row = 0;
  const entries = marks.map((mark): LegendEntry => {
    const text = words[mark];
    const width = markPx + 8 + pen.textWidth(text);
    if (x > 0 && x + width > widthPx) {
      x = 0;
      row += 1;
    }
    const entry = { mark, text, x, y: row * rowPx };
    x += width + gapPx;
    return entry;
  });
  return { entries, heightPx: (row + 1) * rowPx };
}

export function drawLegend(pen: Pen, palette: Palette, legend: Legend): void {
  for (const { mark, text, x, y } of legend.entries) {
    pen.save();
    pen.translate(x, y);
    drawMark(pen, palette, mark);
    pen.font = boardFont.small;
    pen.fillStyle = palette.ink;
    pen.fillText(text, markPx + 8, 17);
    pen.restore();
  }
}

function drawMark(pen: Pen, palette: Palette, mark: Mark): void {
  switch (mark) {
    case "run":
      return drawWeb(pen, palette, { band: palette.act, isLate: false });
    case "clear":
      return drawWeb(pen, palette, {
        band: { ground: palette.leaf, line: palette.clear, stepPx: 6, linePx: 1.3, shiftPx: 0 },
        isLate: false,
      });
    case "late":
      return drawWeb(pen, palette, { band: palette.act, isLate: true });
    case "change":
      roundedPath(pen, { x: 12, y: 2, width: 12, height: markHeightPx - 4 }, 3);
      pen.fillStyle = palette.gate;
      return pen.fill();
    case "pause":
      pen.strokeStyle = palette.outline;
      pen.lineWidth = 1.5;
      pen.setLineDash([4, 4]);
      pen.beginPath();
      pen.moveTo(0, markHeightPx / 2);
      pen.lineTo(markPx, markHeightPx / 2);
      pen.stroke();
      return pen.setLineDash([]);
    case "closed":
      return fillBox(
        pen,
        { x: 0, y: 0, width: markPx, height: markHeightPx },
        { ground: palette.shut, line: palette.shutLine, stepPx: 9, linePx: 1.2, shiftPx: 0 },
      );
    case "due":
      pen.strokeStyle = palette.soft;
      pen.fillStyle = palette.soft;
      pen.lineWidth = 1.2;
      lineDown(pen, 14, 4, 20);
      return flag(pen, 14.5, 4);
    case "held":
      return drawLock(pen, palette.ink, 13, 19);
    case "frozen":
      return drawFrozenMark(pen, palette, { width: markPx, height: markHeightPx });
    case "promised":
      return drawTag(pen, palette.ink, 12, 17);
    case "now":
      pen.strokeStyle = palette.act;
      pen.lineWidth = 2;
      return lineDown(pen, 18, 0, markHeightPx);
  }
}

interface Web {
  readonly band: Pen["fillStyle"];
  readonly isLate: boolean;
}

function drawWeb(pen: Pen, palette: Palette, { band, isLate }: Web): void {
  const box = { x: 0.5, y: 0.5, width: markPx - 1, height: markHeightPx - 1 };
  roundedPath(pen, box, 4);
  pen.fillStyle = isLate ? palette.lateWeak : palette.leaf;
  pen.fill();
  roundedPath(pen, { ...box, height: 8 }, [4, 4, 0, 0]);
  pen.fillStyle = band;
  pen.fill();
  roundedPath(pen, box, 4);
  pen.strokeStyle = isLate ? palette.late : palette.outline;
  pen.lineWidth = isLate ? 2 : 1;
  pen.stroke();
  if (!isLate) return;
  pen.lineWidth = 4;
  pen.setLineDash([2.5, 2.5]);
  pen.beginPath();
  pen.moveTo(14, markHeightPx - 1);
  pen.lineTo(markPx, markHeightPx - 1);
  pen.stroke();
  pen.setLineDash([]);
}
