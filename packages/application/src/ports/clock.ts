/** Time as an argument. */
export interface Clock {
  /** Now, integer seconds since the epoch, UTC. */
  readonly now: () => number;
  /** Milliseconds from any fixed origin, never running backwards; for durations only. */
  readonly monotonicMs: () => number;
}
