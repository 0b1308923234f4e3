import { hitTest, type BoardHit, type BoardPoint } from "../kernels/hit-test.ts";
import type { BoardState } from "../state/board-state.ts";
import type { Intent } from "../state/intents.ts";
import { layoutOf, rowsOf } from "../state/reduce.ts";

/** What the pointer needs of the board. */
export interface PointerBoard {
  readonly read: () => BoardState;
  readonly send: (intent: Intent) => void;
}

const dragFromPx = 5;

/** Mouse and touch on the canvas: drag pans, two fingers zoom, a click picks, hovering points. Answers how to detach. */
export function attachPointer(canvas: HTMLCanvasElement, board: PointerBoard): () => void {
  const held = new Map<number, BoardPoint>();
  let start: BoardPoint | null = null;
  let isDragging = false;

  const onDown = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    canvas.setPointerCapture(event.pointerId);
    held.set(event.pointerId, pointOf(canvas, event));
    start = pointOf(canvas, event);
    isDragging = held.size > 1;
  };

  const onMove = (event: PointerEvent): void => {
    const point = pointOf(canvas, event);
    const before = held.get(event.pointerId);
    if (before === undefined) {
      pointAt(board, hitAt(board.read(), point));
      return;
    }
    if (held.size === 2) pinch(board, held, { id: event.pointerId, to: point });
    else if (isDragging || distance(start ?? point, point) > dragFromPx) {
      isDragging = true;
      canvas.classList.add("dragging");
      board.send({ kind: "panned", byX: before.x - point.x, byY: before.y - point.y });
    } else return;
    held.set(event.pointerId, point);
  };

  const onUp = (event: PointerEvent): void => {
    if (!held.delete(event.pointerId)) return;
    const wasClick = !isDragging && event.type === "pointerup";
    if (held.size === 0) {
      isDragging = false;
      canvas.classList.remove("dragging");
    }
    if (wasClick) board.send({ kind: "picked", hit: hitAt(board.read(), pointOf(canvas, event)) });
  };

  const onLeave = (): void => board.send({ kind: "pointed at", hit: null });

  canvas.addEventListener("pointerdown", onDown);
  canvas.addEventListener("pointermove", onMove);
  canvas.addEventListener("pointerup", onUp);
  canvas.addEventListener("pointercancel", onUp);
  canvas.addEventListener("pointerleave", onLeave);
  return () => {
    canvas.removeEventListener("pointerdown", onDown);
    canvas.removeEventListener("pointermove", onMove);
    canvas.removeEventListener("pointerup", onUp);
    canvas.removeEventListener("pointercancel", onUp);
    canvas.removeEventListener("pointerleave", onLeave);
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

function pointOf(canvas: HTMLCanvasElement, event: PointerEvent): BoardPoint {
  const box = canvas.getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
}

function distance(a: BoardPoint, b: BoardPoint): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
