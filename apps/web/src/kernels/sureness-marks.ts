/** Instants that the small picture of a chance shows, seconds since the epoch; null: not known, or past the plan's end. */
export interface SurenessTimes {
  readonly promised: number;
  readonly wanted: number | null;
  readonly at80: number | null;
  readonly at95: number | null;
}

export type SurenessMarkKind = keyof SurenessTimes;

export interface SurenessMark {
  readonly kind: SurenessMarkKind;
  readonly at: number;
  /** Place on the scale, 0 to 1. */
  readonly share: number;
}

const least = 3 * 3600;

/** The marks in order of time on a scale with a margin on both sides; never so narrow that minutes look like days. */
export function surenessMarks(times: SurenessTimes): readonly SurenessMark[] {
  const known = (["promised", "wanted", "at80", "at95"] as const).flatMap((kind) => {
    const at = times[kind];
    return at === null ? [] : [{ kind, at }];
  });
  const first = Math.min(...known.map(({ at }) => at));
  const last = Math.max(...known.map(({ at }) => at));
  const span = Math.max(least, last - first) * 1.3;
  const start = (first + last - span) / 2;
  return known.map(({ kind, at }) => ({ kind, at, share: (at - start) / span })).sort((a, b) => a.at - b.at);
}
