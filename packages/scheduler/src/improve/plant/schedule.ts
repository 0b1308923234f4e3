/** How a plant is annealed, by its size. */
export interface Schedule {
  /** times that the temperature falls and lateness grows to its full price */
  readonly rounds: number;
  /** share of a round over which lateness grows to its full price */
  readonly rampShare: number;
  /** temperature at the end, in usual losses */
  readonly coldShare: number;
}

const SMALL: Schedule = { rounds: 4, rampShare: 0.5, coldShare: 0.0005 };
const MIDDLING: Schedule = { rounds: 1, rampShare: 0.6, coldShare: 0.01 };
/** Measured at 500 jobs: ends lower when lateness grows slowly and it stays warm. */
const LARGE: Schedule = { rounds: 1, rampShare: 0.9, coldShare: 0.06 };

export function scheduleFor(jobs: number): Schedule {
  if (jobs <= 40) return SMALL;
  return jobs <= 300 ? MIDDLING : LARGE;
}
