import type { Random } from "../../chance/random.ts";

/** Longest block that a kick moves, and how far at the most, places. */
const LONGEST_KICK = 10;
const KICK_REACH = 30;

export function shuffle(random: Random, sequence: Int32Array): void {
  for (let p = sequence.length - 1; p > 0; p--) {
    const q = random.below(p + 1);
    const order = sequence[p]!;
    sequence[p] = sequence[q]!;
    sequence[q] = order;
  }
}

/**
 * Order crossover: a stretch of one parent stays in place, the rest follows the other's order, either from the front or, going
 * round, from the stretch's end. `child` is neither parent; its orders are those of the parents.
 */
export function cross(random: Random, a: Int32Array, b: Int32Array, child: Int32Array): void {
  const n = a.length;
  const goesRound = random.below(2) === 1;
  const size = 1 + random.below(Math.max(1, n - 1));
  const from = goesRound ? random.below(n) : random.below(n - size + 1);
  const isKept = new Uint8Array(n);
  const isTaken = new Uint8Array(n);
  for (let i = 0; i < size; i++) {
    const p = (from + i) % n;
    child[p] = a[p]!;
    isKept[a[p]!] = 1;
    isTaken[p] = 1;
  }
  let p = goesRound ? (from + size) % n : 0;
  for (const order of b) {
    if (isKept[order] === 1) continue;
    while (isTaken[p] === 1) p = (p + 1) % n;
    child[p] = order;
    p = (p + 1) % n;
  }
}

/** Moves a random block of a sequence of at least two orders; gives the stretch [from, to) that changed. */
export function moveBlock(
  random: Random,
  sequence: Int32Array,
): { readonly from: number; readonly to: number } {
  const n = sequence.length;
  const size = 1 + random.below(Math.min(n - 1, LONGEST_KICK));
  const from = random.below(n - size + 1);
  const block = sequence.slice(from, from + size);
  sequence.copyWithin(from, from + size);
  const to = Math.max(0, Math.min(n - size, from - KICK_REACH + random.below(2 * KICK_REACH + 1)));
  sequence.copyWithin(to + size, to, n - size);
  sequence.set(block, to);
  return { from: Math.min(from, to), to: Math.max(from, to) + size };
}
