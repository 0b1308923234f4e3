import { describe, expect, it } from "vitest";
import { gridMove, loadLevel, stackedBars } from "./load-level.ts";

describe("load level", () => {
  it("goes up at its limits", () => {
    const shares = [0, 0.01, 0.4, 0.41, 0.7, 0.71, 0.9, 0.901, 1, 1.001];
    expect(shares.map((share) => loadLevel(share, 0))).toEqual([
      "free",
      "low",
      "low",
      "middle",
      "middle",
      "high",
      "high",
      "full",
      "full",
      "over",
    ]);
    expect([loadLevel(null, 0), loadLevel(null, 1)]).toEqual(["shut", "over"]);
  });
});

describe("ways through the grid", () => {
  const size = { rows: 3, columns: 5 };
  const from = { row: 1, column: 4 };

  it("ends at the edges", () => {
    expect(gridMove("ArrowRight", from, size)).toEqual(from);
    expect(gridMove("ArrowLeft", from, size)).toEqual({ row: 1, column: 3 });
    expect(gridMove("ArrowUp", from, size)).toEqual({ row: 0, column: 4 });
    expect(gridMove("ArrowDown", { row: 2, column: 0 }, size)).toEqual({ row: 2, column: 0 });
    expect(gridMove("Home", from, size)).toEqual({ row: 1, column: 0 });
    expect(gridMove("End", { row: 1, column: 0 }, size)).toEqual(from);
    expect(gridMove("PageUp", from, size)).toEqual({ row: 0, column: 4 });
    expect(gridMove("PageDown", from, size)).toEqual({ row: 2, column: 4 });
    expect(gridMove("x", from, size)).toBeNull();
  });
});

describe("stacked bars", () => {
  it("stack every part to one scale, what has no room on top", () => {
    const none = [0, 0];
    const load = {
      id: "L",
      units: 1,
      outside: none,
      share: [1.5, 0.25],
      basis: ["both", "planned"] as const,
    };
    const bars = stackedBars({
      ...load,
      basis: [...load.basis],
      run: [6, 2],
      change: [2, 0],
      idle: [0, 6],
      stop: none,
      closed: [8, 8],
      beyond: [4, 0],
    });
    expect(bars[0]).toEqual([
      { part: "run", from: 0, to: 0.3 },
      { part: "change", from: 0.3, to: 0.4 },
      { part: "closed", from: 0.4, to: 0.8 },
      { part: "beyond", from: 0.8, to: 1 },
    ]);
    expect(bars[1]?.map(({ part, to }) => [part, to])).toEqual([
      ["run", 0.1],
      ["idle", 0.4],
      ["closed", 0.8],
    ]);
  });
});
