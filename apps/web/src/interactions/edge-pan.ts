import { edgePan } from "../kernels/edge-pan.ts";
import { layoutOf } from "../state/board-view.ts";
import type { PointerBoard } from "./pointer-board.ts";

/** Moves the view frame by frame while a run is held near an edge of the board. */
export function attachEdgePan(board: PointerBoard): {
  readonly start: () => void;
  readonly stop: () => void;
} {
  let request = 0;
  const stop = (): void => {
    cancelAnimationFrame(request);
    request = 0;
  };
  const step = (): void => {
    request = 0;
    const state = board.read();
    const point = state.carry?.point ?? null;
    if (point === null) return;
    const { byX, byY } = edgePan(layoutOf(state), point);
    if (byX === 0 && byY === 0) return;
    board.send({ kind: "panned", byX, byY });
    if (board.read().view !== state.view) start();
  };
  const start = (): void => {
    if (request === 0) request = requestAnimationFrame(step);
  };
  return { start, stop };
}
