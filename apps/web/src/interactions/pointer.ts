import { hitTest, type BoardHit, type BoardPoint } from "../kernels/hit-test.ts";
import type { BoardState } from "../state/board-state.ts";
import { layoutOf, rowsOf } from "../state/board-view.ts";
import { attachEdgePan } from "./edge-pan.ts";
import type { PointerBoard } from "./pointer-board.ts";

const dragFromPx = 5;
const longPressMs = 450;

/**
 * Mouse and touch on the canvas: dragging a run carries it, dragging anything else pans, two fingers zoom, a click picks,
 * hovering points. A finger takes a run up by resting on it; else it pans. Answers how to detach.
 */
export function attachPointer(canvas: HTMLCanvasElement, board: PointerBoard): () => void {
  const held = new Map<number, BoardPoint>();
  let start: BoardPoint | null = null;
  let isDragging = false;
  let press: ReturnType<typeof setTimeout> | undefined;
  const pan = attachEdgePan(board);

  const takeUp = (point: BoardPoint): boolean => {
    const index = runAt(board.read(), point);
    if (index === null) return false;
    board.send({ kind: "taken up", index, point });
    const isTaken = isCarried(board.read());
    if (isTaken) {
      isDragging = true;
      canvas.classList.add("dragging");
      canvas.focus({ preventScroll: true });
    }
    return isTaken;
  };

  const onDown = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    const point = pointOf(canvas, event);
    canvas.setPointerCapture(event.pointerId);
    held.set(event.pointerId, point);
    start = point;
    isDragging = held.size > 1;
    clearTimeout(press);
    if (held.size > 1) giveUp(board);
    else if (event.pointerType === "touch") press = setTimeout(() => takeUp(point), longPressMs);
  };

  const onMove = (event: PointerEvent): void => {
    const point = pointOf(canvas, event);
    const before = held.get(event.pointerId);
    if (before === undefined) {
      if (board.read().carry === null) pointAt(board, hitAt(board.read(), point));
      return;
    }
    if (isCarried(board.read())) {
      board.send({ kind: "carried to", point });
      pan.start();
    } else if (held.size === 2) pinch(board, held, { id: event.pointerId, to: point });
    else if (isDragging || distance(start ?? point, point) > dragFromPx) {
      clearTimeout(press);
      const isFirst = !isDragging;
      isDragging = true;
      canvas.classList.add("dragging");
      if (isFirst && event.pointerType !== "touch" && takeUp(start ?? point))
        board.send({ kind: "carried to", point });
      else board.send({ kind: "panned", byX: before.x - point.x, byY: before.y - point.y });
    } else return;
    held.set(event.pointerId, point);
  };

  const onUp = (event: PointerEvent): void => {
    clearTimeout(press);
    if (!held.delete(event.pointerId)) return;
    pan.stop();
    const wasClick = !isDragging && event.type === "pointerup";
    if (held.size === 0) {
      isDragging = false;
      canvas.classList.remove("dragging");
    }
    if (isCarried(board.read())) board.send({ kind: event.type === "pointerup" ? "let go" : "given up" });
    else if (wasClick) board.send({ kind: "picked", hit: hitAt(board.read(), pointOf(canvas, event)) });
  };

  const onLeave = (): void => board.send({ kind: "pointed at", hit: null });
  // A browser would scroll the page, or open its menu, under a finger that carries a run.
  const onTouchMove = (event: TouchEvent): void => {
    if (isCarried(board.read())) event.preventDefault();
  };
  const onMenu = (event: Event): void => {
    if (held.size > 0) event.preventDefault();
  };

  canvas.addEventListener("pointerdown", onDown);
  canvas.addEventListener("pointermove", onMove);
  canvas.addEventListener("pointerup", onUp);
  canvas.addEventListener("pointercancel", onUp);
  canvas.addEventListener("pointerleave", onLeave);
  canvas.addEventListener("touchmove", onTouchMove, { passive: false });
  canvas.addEventListener("contextmenu", onMenu);
  return () => {
    clearTimeout(press);
    pan.stop();
    canvas.removeEventListener("pointerdown", onDown);
    canvas.removeEventListener("pointermove", onMove);
    canvas.removeEventListener("pointerup", onUp);
    canvas.removeEventListener("pointercancel", onUp);
    canvas.removeEventListener("pointerleave", onLeave);
    canvas.removeEventListener("touchmove", onTouchMove);
    canvas.removeEventListener("contextmenu", onMenu);
  };
}

function pinch(
  board: PointerBoard,
  held: ReadonlyMap<number, BoardPoint>,
  move: { readonly id: number; readonly to: BoardPoint },
): void {
  const from = held.get(move.id);
  const other = [...held].find(([id]) => id !== move.id)?.[1];
  if (from === undefined || other === undefined) return;
  const factor = Math.max(20, distance(other, move.to)) / Math.max(20, distance(other, from));
  board.send({ kind: "zoomed", atX: (other.x + move.to.x) / 2, factor });
  board.send({ kind: "panned", byX: (from.x - move.to.x) / 2, byY: (from.y - move.to.y) / 2 });
}

function pointAt(board: PointerBoard, hit: BoardHit): void {
  const { hover } = board.read();
  if (hover !== null && isSameHit(hover, hit)) return;
  board.send({ kind: "pointed at", hit });
}

function giveUp(board: PointerBoard): void {
  if (isCarried(board.read())) board.send({ kind: "given up" });
}

/** A run is in the pointer's hold (not the keyboard's). */
function isCarried({ carry }: BoardState): boolean {
  return carry?.point !== undefined && carry.point !== null;
}

function isSameHit(a: BoardHit, b: BoardHit): boolean {
  if (a.kind === "segment") return b.kind === "segment" && a.index === b.index && a.rowIndex === b.rowIndex;
  if (a.kind === "gap") return b.kind === "gap" && a.rowIndex === b.rowIndex && a.start === b.start;
  return a.kind === b.kind;
}

/** What lies under a point of the canvas in a state; nothing without a plan. */
function hitAt(state: BoardState, point: BoardPoint): BoardHit {
  const rows = rowsOf(state);
  return rows === null ? { kind: "nothing" } : hitTest(rows, layoutOf(state), state.view, point);
}

/** Position of the run under a point; null where there is none. */
function runAt(state: BoardState, point: BoardPoint): number | null {
  const hit = hitAt(state, point);
  if (hit.kind !== "segment") return null;
  return state.plan?.segments[hit.index]?.source.kind === "run" ? hit.index : null;
}

function pointOf(canvas: HTMLCanvasElement, event: PointerEvent): BoardPoint {
  const box = canvas.getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
}

function distance(a: BoardPoint, b: BoardPoint): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
