/** What part of the time axis is in sight: instant at the left edge, and seconds in one CSS pixel. */
export interface TimeView {
  readonly startAt: number;
  readonly secondsPerPx: number;
}

/** The stretch of time that a board holds, and the width in CSS pixels on which it is drawn. */
export interface TimeBounds {
  readonly startAt: number;
  readonly endAt: number;
  readonly widthPx: number;
}

const hour = 3600;
/** Closest: two hours across the board. */
const leastSpanSeconds = 2 * hour;
/** Widest: eight weeks and a margin, or the whole plan when that is longer. */
const eightWeeksSeconds = 8 * 7 * 24 * hour;
/** Empty board that may be pulled into sight beyond either end, as a share of the width. */
const marginShare = 0.15;
/** Margin before a span that is shown from its start. */
const sliverShare = 0.015;

export function xOfInstant(view: TimeView, instant: number): number {
  return (instant - view.startAt) / view.secondsPerPx;
}

export function instantAtX(view: TimeView, x: number): number {
  return view.startAt + x * view.secondsPerPx;
}

/** Right edge of the view. */
export function viewEndAt(view: TimeView, widthPx: number): number {
  return instantAtX(view, widthPx);
}

/** The view nearest to `view` that stays within the zoom limits and keeps the plan in sight. */
export function clampView(view: TimeView, bounds: TimeBounds): TimeView {
  const width = Math.max(1, bounds.widthPx);
  const planSpan = Math.max(leastSpanSeconds, bounds.endAt - bounds.startAt);
  const widest = (Math.max(eightWeeksSeconds, planSpan) * (1 + marginShare)) / width;
  const secondsPerPx = Math.min(widest, Math.max(leastSpanSeconds / width, view.secondsPerPx));
  const span = secondsPerPx * width;
  const margin = span * marginShare;
  const first = bounds.startAt - margin;
  const last = Math.max(bounds.startAt - span * sliverShare, bounds.endAt + margin - span);
  return { startAt: Math.min(last, Math.max(first, view.startAt)), secondsPerPx };
}

/** Zooms by `factor` (above 1 comes closer); the instant under `atX` stays under it unless a limit is met. */
export function zoomView(
  view: TimeView,
  bounds: TimeBounds,
  zoom: { readonly atX: number; readonly factor: number },
): TimeView {
  const held = instantAtX(view, zoom.atX);
  const { secondsPerPx } = clampView(
    { startAt: view.startAt, secondsPerPx: view.secondsPerPx / zoom.factor },
    bounds,
  );
  return clampView({ startAt: held - zoom.atX * secondsPerPx, secondsPerPx }, bounds);
}

/** Moves the view by `byPx` to the right (later). */
export function panView(view: TimeView, bounds: TimeBounds, byPx: number): TimeView {
  return clampView({ startAt: instantAtX(view, byPx), secondsPerPx: view.secondsPerPx }, bounds);
}

/** Shows `spanSeconds` from `startAt`, with a sliver of margin before it. */
export function spanView(bounds: TimeBounds, startAt: number, spanSeconds: number): TimeView {
  const secondsPerPx = (spanSeconds * 1.03) / Math.max(1, bounds.widthPx);
  return clampView({ startAt: startAt - spanSeconds * sliverShare, secondsPerPx }, bounds);
}

/** Moves the view as little as needed so that [startAt, endAt) is in sight; a longer stretch shows its start. */
export function revealInView(
  view: TimeView,
  bounds: TimeBounds,
  span: { readonly startAt: number; readonly endAt: number },
): TimeView {
  const pad = bounds.widthPx * 0.06 * view.secondsPerPx;
  const viewEnd = viewEndAt(view, bounds.widthPx);
  if (span.startAt >= view.startAt + pad && span.endAt <= viewEnd - pad) return view;
  const tooLate = span.endAt > viewEnd - pad;
  const shift = tooLate ? span.endAt + pad - viewEnd : 0;
  const startAt = Math.min(view.startAt + shift, span.startAt - pad);
  return clampView({ startAt, secondsPerPx: view.secondsPerPx }, bounds);
}
