import fc from "fast-check";
import { afterEach, describe, expect, it, vi } from "vitest";
import { CanvasPen } from "./canvas-pen.ts";
import { boardFont, type Font, type Hatch } from "./pen.ts";

interface Drawn {
  readonly fillStyle: unknown;
  readonly strokeStyle: unknown;
  readonly lineWidth: unknown;
  readonly globalAlpha: unknown;
}

/** A canvas that keeps its state as the HTML standard says, and notes with what state each thing was drawn. */
class NotedContext {
  fillStyle: unknown = "left by another";
  strokeStyle: unknown = "left by another";
  lineWidth = 99;
  globalAlpha = 0.5;
  font = "left by another";
  readonly drawn: Drawn[] = [];
  readonly written: string[] = [];
  patterns = 0;
  readonly #saved: object[] = [];

  setTransform(): void {
    // Where it is drawn is no business of these tests.
  }
  save(): void {
    const { fillStyle, strokeStyle, lineWidth, globalAlpha, font } = this;
    this.#saved.push({ fillStyle, strokeStyle, lineWidth, globalAlpha, font });
  }
  restore(): void {
    Object.assign(this, this.#saved.pop());
  }
  fillRect(): void {
    const { fillStyle, strokeStyle, lineWidth, globalAlpha } = this;
    this.drawn.push({ fillStyle, strokeStyle, lineWidth, globalAlpha });
  }
  fillText(text: string): void {
    this.written.push(`${text} in ${this.font}`);
  }
  measureText(text: string): { readonly width: number } {
    return { width: text.length * this.font.length };
  }
  createPattern(): NotedPattern {
    this.patterns += 1;
    return new NotedPattern();
  }
}

class NotedPattern {
  readonly shifts: number[] = [];
  setTransform({ e }: { readonly e: number }): void {
    this.shifts.push(e);
  }
}

const penOn = (context: NotedContext, density = 1): CanvasPen =>
  new CanvasPen(context as unknown as CanvasRenderingContext2D, density);

type Move =
  | { readonly fillStyle: string }
  | { readonly strokeStyle: string }
  | { readonly lineWidth: number }
  | { readonly globalAlpha: number }
  | { readonly font: Font }
  | "save"
  | "restore"
  | "box"
  | "words";

const move: fc.Arbitrary<Move> = fc.oneof(
  fc.record({ fillStyle: fc.constantFrom("#000", "#111", "#222") }),
  fc.record({ strokeStyle: fc.constantFrom("#000", "#111", "#222") }),
  fc.record({ lineWidth: fc.constantFrom(1, 1.5, 2) }),
  fc.record({ globalAlpha: fc.constantFrom(1, 0.5, 0.2) }),
  fc.record({ font: fc.constantFrom(boardFont.small, boardFont.mould, boardFont.gate) }),
  fc.constantFrom("save" as const, "restore" as const, "box" as const, "words" as const),
);

describe("the pen on a canvas", () => {
  afterEach(() => void vi.unstubAllGlobals());

  it("draws everything in the state that it was given, whatever it does not tell the canvas", () => {
    fc.assert(
      fc.property(fc.array(move, { maxLength: 60 }), (moves) => {
        const context = new NotedContext();
        const pen = penOn(context);
        let open = 0;
        for (const each of moves) {
          if (typeof each === "object") Object.assign(pen, each);
          else if (each === "save") {
            pen.save();
            open += 1;
          } else if (each === "restore" && open > 0) {
            pen.restore();
            open -= 1;
          } else if (each === "box") {
            pen.fillRect(0, 0, 1, 1);
            const { fillStyle, strokeStyle, lineWidth, globalAlpha } = pen;
            expect(context.drawn.at(-1)).toEqual({ fillStyle, strokeStyle, lineWidth, globalAlpha });
          } else if (each === "words") {
            pen.fillText("L1", 0, 0);
            expect(context.written.at(-1)).toBe(`L1 in ${pen.font.css}`);
          }
        }
      }),
    );
  });

  it("measures words in its own font, not in that of what it wrote last", () => {
    const pen = penOn(new NotedContext());
    pen.font = boardFont.heading;
    pen.fillText("Week", 0, 0);
    pen.font = boardFont.day;
    const words = "measured nowhere else";
    expect(pen.textWidth(words)).toBe(words.length * boardFont.day.css.length);
  });

  it("makes a hatch once, and moves it by whole device pixels", () => {
    const tile = { beginPath: vi.fn(), fillRect: vi.fn(), moveTo: vi.fn(), lineTo: vi.fn(), stroke: vi.fn() };
    vi.stubGlobal("document", { createElement: () => ({ getContext: () => tile }) });
    vi.stubGlobal(
      "DOMMatrix",
      class {
        readonly e: number;
        constructor(parts: readonly number[]) {
          this.e = parts[4] ?? Number.NaN;
        }
      },
    );
    const context = new NotedContext();
    const pen = penOn(context, 2);
    const hatch = (shiftPx: number): Hatch => ({ ground: "#1", line: "#2", stepPx: 9, linePx: 1, shiftPx });
    pen.fillStyle = hatch(0.3);
    const pattern = context.fillStyle as NotedPattern;
    for (const shiftPx of [0.4, 9.4, 3.6, -3.6]) pen.fillStyle = hatch(shiftPx);
    expect(context.patterns).toBe(1);
    expect(context.fillStyle).toBe(pattern);
    expect(pattern.shifts).toEqual([0.5, 3.5, -3.5]);
  });
});
