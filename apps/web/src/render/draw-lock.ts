import type { Pen } from "./pen.ts";

/** Width of the mark, CSS pixels. */
export const lockPx = 9;

/** A small padlock in the pen's ink, its body's left lower corner at (x, y): the order is held, whatever the colours. */
export function drawLock(pen: Pen, ink: string, x: number, y: number): void {
  pen.fillStyle = ink;
  pen.fillRect(x, y - 7, lockPx, 7);
  pen.strokeStyle = ink;
  pen.lineWidth = 1.6;
  pen.beginPath();
  pen.arch(x + lockPx / 2, y - 7, 2.7);
  pen.stroke();
}
