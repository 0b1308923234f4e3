import { greatestScrollPx } from "../kernels/row-layout.ts";
import { layoutOf } from "../state/board-view.ts";
import type { PointerBoard } from "./pointer-board.ts";

const pxPerLine = 18;
/** Wheel travel that halves or doubles the zoom, CSS pixels. */
const halfTravelPx = 260;

/**
 * Wheel on the canvas: with Ctrl (and a pinch on a touchpad) it zooms at the pointer; sideways or with Shift it pans;
 * up and down scrolls the rows while there are more, else it pans.
 */
export function attachWheel(canvas: HTMLCanvasElement, board: PointerBoard): () => void {
  const onWheel = (event: WheelEvent): void => {
    const unit = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? pxPerLine : 1;
    const [deltaX, deltaY] = [event.deltaX * unit, event.deltaY * unit];
    event.preventDefault();
    if (event.ctrlKey || event.metaKey) {
      const atX = event.clientX - canvas.getBoundingClientRect().left;
      board.send({ kind: "zoomed", atX, factor: 2 ** (-deltaY / halfTravelPx) });
      return;
    }
    if (event.shiftKey) board.send({ kind: "panned", byX: deltaX === 0 ? deltaY : deltaX, byY: 0 });
    else if (greatestScrollPx(layoutOf(board.read())) > 0)
      board.send({ kind: "panned", byX: deltaX, byY: deltaY });
    else board.send({ kind: "panned", byX: deltaX + deltaY, byY: 0 });
  };
  canvas.addEventListener("wheel", onWheel, { passive: false });
  return () => canvas.removeEventListener("wheel", onWheel);
}
