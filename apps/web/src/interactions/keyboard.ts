import type { Intent } from "../state/intents.ts";

export interface BoardKey {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly altKey: boolean;
  readonly metaKey: boolean;
}

const zoomStep = 1.5;

/** The intent that a key on the board stands for; null when it stands for none. `now` is in seconds, `pagePx` a screen's width. */
export function intentOfKey(event: BoardKey, now: number, pagePx: number): Intent | null {
  if (event.ctrlKey || event.altKey || event.metaKey) return null;
  switch (event.key) {
    case "ArrowLeft":
      return { kind: "walked", step: "earlier" };
    case "ArrowRight":
      return { kind: "walked", step: "later" };
    case "ArrowUp":
      return { kind: "walked", step: "line above" };
    case "ArrowDown":
      return { kind: "walked", step: "line below" };
    case "Home":
      return { kind: "walked", step: "first on line" };
    case "End":
      return { kind: "walked", step: "last on line" };
    case "l":
    case "L":
      return { kind: "walked", step: event.shiftKey ? "previous late" : "next late" };
    case "+":
    case "=":
      return { kind: "zoomed", atX: null, factor: zoomStep };
    case "-":
      return { kind: "zoomed", atX: null, factor: 1 / zoomStep };
    case "PageUp":
      return { kind: "panned", byX: -pagePx * 0.8, byY: 0 };
    case "PageDown":
      return { kind: "panned", byX: pagePx * 0.8, byY: 0 };
    case "0":
      return { kind: "span chosen", spanSeconds: "whole plan" };
    case "n":
    case "N":
      return { kind: "went to instant", at: now };
    case "m":
    case "M":
      return { kind: "selected taken up" };
    case "h":
    case "H":
      return { kind: "line sought" };
    case "b":
    case "B":
      return { kind: "other plan sought" };
    case "Escape":
      return { kind: "selected", selection: null };
    default:
      return null;
  }
}

const viewKinds: ReadonlySet<Intent["kind"]> = new Set([
  "zoomed",
  "panned",
  "span chosen",
  "went to instant",
]);

/** As `intentOfKey`, while a run is carried: arrows move it, and of the other keys those that move the view stay. */
export function intentOfCarryKey(event: BoardKey, now: number, pagePx: number): Intent | null {
  if (event.ctrlKey || event.altKey || event.metaKey) return null;
  switch (event.key) {
    case "ArrowLeft":
      return { kind: "carried on", step: "earlier" };
    case "ArrowRight":
      return { kind: "carried on", step: "later" };
    case "ArrowUp":
      return { kind: "carried on", step: "line above" };
    case "ArrowDown":
      return { kind: "carried on", step: "line below" };
    case "Home":
      return { kind: "carried on", step: "first on line" };
    case "End":
      return { kind: "carried on", step: "last on line" };
    case "Enter":
      return { kind: "let go" };
    case "Escape":
      return { kind: "given up" };
    default: {
      const intent = intentOfKey(event, now, pagePx);
      return intent !== null && viewKinds.has(intent.kind) ? intent : null;
    }
  }
}

/** What a key with Ctrl (or Command) asks of the plan's steps; null for other keys. */
export function undoKey(event: BoardKey): "undo" | "redo" | null {
  if (event.altKey || event.ctrlKey === event.metaKey) return null;
  const key = event.key.toLowerCase();
  if (key === "z") return event.shiftKey ? "redo" : "undo";
  return key === "y" && !event.shiftKey ? "redo" : null;
}
