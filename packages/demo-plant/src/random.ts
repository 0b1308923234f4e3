/** A small seeded generator (mulberry32, public domain, from memory); the state is a value held by the caller. */
export interface Random {
  /** Next value in [0, 1). */
  readonly next: () => number;
  /** Whole number in [low, high], both included. */
  readonly whole: (low: number, high: number) => number;
  /** One item of a list that is not empty. */
  readonly pick: <T>(items: readonly T[]) => T;
}

/** A generator whose sequence depends on `seed` (any whole number) alone. */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const whole = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  const pick = <T>(items: readonly T[]): T => items[whole(0, items.length - 1)] as T;
  return { next, whole, pick };
}
