/** How a plant is annealed, by its size. */
export interface Schedule {
  /** times that the temperature falls in all */
  readonly rounds: number;
  /** share of the budget over which lateness grows to its full price */
  readonly rampShare: number;
  /** temperature at the end, in usual losses */
  readonly coldShare: number;
}

const SMALL: Schedule = { rounds: 4, rampShare: 0.5, coldShare: 0.0005 };
/** Measured at 200 jobs to end clearly lower when it stays warmer; large ones have too few steps for that. */
const MIDDLING: Schedule = { rounds: 1, rampShare: 0.8, coldShare: 0.01 };
const LARGE: Schedule = { rounds: 1, rampShare: 0.5, coldShare: 0.0005 };

export function scheduleFor(jobs: number): Schedule {
  if (jobs <= 40) return SMALL;
  return jobs <= 300 ? MIDDLING : LARGE;
}
