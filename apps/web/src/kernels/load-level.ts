import type { ResourceLoad } from "@formweek/contracts";

/** How full a bucket is: from nothing to more than there is time for. */
export type LoadLevel = "shut" | "free" | "low" | "middle" | "high" | "full" | "over";

/** The level of a share; "shut" where nothing can be worked. Above nine tenths is full, as the warnings have it. */
export function loadLevel(share: number | null, beyond: number): LoadLevel {
  if (share === null) return beyond > 0 ? "over" : "shut";
  if (share > 1) return "over";
  if (share > 0.9) return "full";
  if (share > 0.7) return "high";
  if (share > 0.4) return "middle";
  return share > 0 ? "low" : "free";
}

/** Place of a cell in a grid. */
export interface GridPlace {
  readonly row: number;
  readonly column: number;
}

/** Where a key leads in a grid of so many rows and columns; null for keys that lead nowhere. */
export function gridMove(
  key: string,
  place: GridPlace,
  size: { readonly rows: number; readonly columns: number },
): GridPlace | null {
  const { row, column } = place;
  const within = (value: number, count: number): number => Math.max(0, Math.min(count - 1, value));
  const to = (nextRow: number, nextColumn: number): GridPlace => ({
    row: within(nextRow, size.rows),
    column: within(nextColumn, size.columns),
  });
  switch (key) {
    case "ArrowLeft":
      return to(row, column - 1);
    case "ArrowRight":
      return to(row, column + 1);
    case "ArrowUp":
      return to(row - 1, column);
    case "ArrowDown":
      return to(row + 1, column);
    case "Home":
      return to(row, 0);
    case "End":
      return to(row, size.columns - 1);
    case "PageUp":
      return to(0, column);
    case "PageDown":
      return to(size.rows - 1, column);
    default:
      return null;
  }
}

/** Parts of a stacked bar, from the foot up; what has no room stands on top of all the time that there is. */
export const BAR_PARTS = ["run", "change", "idle", "stop", "closed", "beyond"] as const;
export type BarPart = (typeof BAR_PARTS)[number];

export interface BarPiece {
  readonly part: BarPart;
  /** From the foot of the highest bar (0) to its top (1). */
  readonly from: number;
  readonly to: number;
}

/** The pieces of each bucket's bar, without empty ones, all to one scale. */
export function stackedBars(load: ResourceLoad): readonly (readonly BarPiece[])[] {
  const heights = load.run.map((_, at) => BAR_PARTS.reduce((sum, part) => sum + (load[part][at] ?? 0), 0));
  const top = Math.max(1, ...heights);
  return load.run.map((_, at) => {
    let foot = 0;
    return BAR_PARTS.flatMap((part): readonly BarPiece[] => {
      const height = load[part][at] ?? 0;
      const from = foot;
      foot += height;
      return height === 0 ? [] : [{ part, from: from / top, to: foot / top }];
    });
  });
}
