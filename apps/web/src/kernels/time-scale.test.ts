import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  clampView,
  instantAtX,
  panView,
  revealInView,
  spanView,
  viewEndAt,
  xOfInstant,
  zoomView,
  type TimeBounds,
} from "./time-scale.ts";

const day = 86_400;
const bounds: TimeBounds = { startAt: 1_800_000_000, endAt: 1_800_000_000 + 14 * day, widthPx: 1000 };
const anyView = fc.record({
  startAt: fc.integer({ min: bounds.startAt - 100 * day, max: bounds.endAt + 100 * day }),
  secondsPerPx: fc.double({ min: 0.01, max: 1e6, noNaN: true }),
});

describe("time scale", () => {
  it("turns instants into places and back", () => {
    fc.assert(
      fc.property(anyView, fc.integer({ min: 0, max: 2_000_000_000 }), (view, instant) => {
        expect(instantAtX(view, xOfInstant(view, instant))).toBeCloseTo(instant, 2);
      }),
    );
  });

  it("always keeps some of the plan in sight, between two hours and eight weeks across", () => {
    fc.assert(
      fc.property(anyView, (wild) => {
        const view = clampView(wild, bounds);
        const end = viewEndAt(view, bounds.widthPx);
        expect(view.startAt).toBeLessThan(bounds.endAt);
        expect(end).toBeGreaterThan(bounds.startAt);
        expect(end - view.startAt).toBeGreaterThanOrEqual(2 * 3600 - 1);
        expect(end - view.startAt).toBeLessThanOrEqual(56 * day * 1.15 + 1);
        const again = clampView(view, bounds);
        expect(again.startAt).toBeCloseTo(view.startAt, 3);
        expect(again.secondsPerPx).toBeCloseTo(view.secondsPerPx, 9);
      }),
    );
  });

  it("keeps the instant under the pointer while it zooms within the limits", () => {
    const view = spanView(bounds, bounds.startAt + 5 * day, 2 * day);
    const held = instantAtX(view, 400);
    const closer = zoomView(view, bounds, { atX: 400, factor: 1.7 });
    expect(instantAtX(closer, 400)).toBeCloseTo(held, 3);
    expect(closer.secondsPerPx).toBeCloseTo(view.secondsPerPx / 1.7, 9);
  });

  it("undoes a pan by the opposite pan within the limits", () => {
    const view = spanView(bounds, bounds.startAt + 5 * day, 2 * day);
    const back = panView(panView(view, bounds, 120), bounds, -120);
    expect(back.startAt).toBeCloseTo(view.startAt, 3);
  });

  it("brings any segment that fits wholly into sight", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 13 * day }),
        fc.integer({ min: 60, max: day }),
        (offset, length) => {
          const view = spanView(bounds, bounds.startAt + 6 * day, 3 * day);
          const span = { startAt: bounds.startAt + offset, endAt: bounds.startAt + offset + length };
          const shown = revealInView(view, bounds, span);
          expect(shown.startAt).toBeLessThanOrEqual(span.startAt);
          expect(viewEndAt(shown, bounds.widthPx)).toBeGreaterThanOrEqual(span.endAt);
        },
      ),
    );
  });
});
