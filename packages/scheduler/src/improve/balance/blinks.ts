import type { Random } from "../../chance/random.ts";

/** True when the place at hand is to be overlooked. */
export type Blink = () => boolean;

/** Overlooks one place in `every` on average (Christiaens and Vanden Berghe 2020): a count to the next one instead of a draw for each. */
export function createBlink(random: Random, every: number): Blink {
  let left = random.below(2 * every - 1);
  return () => {
    if (--left >= 0) return false;
    left = random.below(2 * every - 1);
    return true;
  };
}
