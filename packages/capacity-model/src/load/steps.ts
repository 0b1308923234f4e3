import type { WorkingTime } from "../calendar/working-time.ts";

/** An amount over time in whole numbers: from `at[i]` on it is `value[i]`, before the first it is 0. Sorted, no two alike in a row. */
export interface Steps {
  readonly at: readonly number[];
  readonly value: readonly number[];
}

/** So much of something over [start, end). */
export interface AmountSpell {
  readonly start: number;
  readonly end: number;
  readonly amount: number;
}

/** Spells added up: where they overlap, their amounts add. Empty spells count nothing. O(n log n). */
export function stepsOf(spells: readonly AmountSpell[]): Steps {
  const deltas = spells
    .filter(({ start, end }) => end > start)
    .flatMap(({ start, end, amount }): [number, number][] => [
      [start, amount],
      [end, -amount],
    ])
    .sort((a, b) => a[0] - b[0]);
  const at: number[] = [];
  const value: number[] = [];
  let sum = 0;
  deltas.forEach(([instant, delta], index) => {
    sum += delta;
    const isLastOfInstant = deltas[index + 1]?.[0] !== instant;
    if (!isLastOfInstant || sum === (value.at(-1) ?? 0)) return;
    at.push(instant);
    value.push(sum);
  });
  return { at, value };
}

/** The spells of a working time, each of one amount. */
export function spellsOfAmount(time: WorkingTime, amount: number): readonly AmountSpell[] {
  return time.starts.map((start, index) => ({ start, end: time.ends[index] as number, amount }));
}

/** Walks forward through steps: the value that holds at an instant, and when it changes next. */
export class StepCursor {
  readonly #steps: Steps;
  #next = 0;

  constructor(steps: Steps) {
    this.#steps = steps;
  }

  /** Value at an instant that is not before the one asked for last. */
  valueAt(instant: number): number {
    while (this.changesAt <= instant) this.#next += 1;
    return this.#next === 0 ? 0 : (this.#steps.value[this.#next - 1] as number);
  }

  /** First change after the instant asked for last; infinite when there is none. */
  get changesAt(): number {
    return this.#steps.at[this.#next] ?? Number.POSITIVE_INFINITY;
  }
}
