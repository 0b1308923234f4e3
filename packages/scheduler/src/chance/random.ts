/**
 * Small seeded generator (sfc32 by Chris Doty-Humphrey, from memory). Same seed, same numbers, on every machine.
 */
export interface Random {
  /** Uniform integer in [0, bound); `bound` in 1 … 2^31. */
  readonly below: (bound: number) => number;
  /** Uniform in [0, 1), 32 bits. */
  readonly unit: () => number;
}

export function createRandom(seed: number): Random {
  let a = 0x9e3779b9 | 0;
  let b = 0x243f6a88 | 0;
  let c = seed | 0;
  let counter = Math.floor(seed / 4294967296) | 1;
  const next = (): number => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    c |= 0;
    return sum >>> 0;
  };
  for (let round = 0; round < 16; round++) next();
  return {
    below: (bound) => Math.floor((next() / 4294967296) * bound),
    unit: () => next() / 4294967296,
  };
}
