import type { Pen } from "./pen.ts";

/** Width of the mark, CSS pixels. */
export const tagPx = 11;

/** A hanging tag in the pen's ink, its left lower corner at (x, y): the hours are promised to a customer, whatever the colours. */
export function drawTag(pen: Pen, ink: string, x: number, y: number): void {
  const middle = y - 4.5;
  pen.beginPath();
  pen.moveTo(x, middle);
  pen.lineTo(x + 4, y - 9);
  pen.lineTo(x + tagPx, y - 9);
  pen.lineTo(x + tagPx, y);
  pen.lineTo(x + 4, y);
  pen.closePath();
  pen.strokeStyle = ink;
  pen.lineWidth = 1.5;
  pen.stroke();
  pen.fillStyle = ink;
  pen.fillRect(x + 4, middle - 1, 2, 2);
}
