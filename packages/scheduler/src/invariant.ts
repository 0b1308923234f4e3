/** A promise of the engine to itself. A broken one is a bug, never an outcome: the only place that throws. */
export function invariant(holds: boolean, promise: string): asserts holds {
  if (!holds) throw new Error(`Broken promise of the engine: ${promise}`);
}
