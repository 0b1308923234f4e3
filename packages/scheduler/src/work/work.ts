/** Long work that pauses every few milliseconds, so that whoever drives it may give it up in between. */
export type Work<Result> = Generator<undefined, Result, undefined>;

/** What the work comes to, however long it takes. */
export function finish<Result>(work: Work<Result>): Result {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

/** What the work comes to, or null where it was given up: asked before it and at each of its pauses. */
export function finishUnless<Result>(isCancelled: () => boolean, work: Work<Result>): Result | null {
  while (!isCancelled()) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
  return null;
}
