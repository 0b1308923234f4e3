/** Places before and after a changed stretch, or a cut of a move, that a near search looks at again. */
export const NEAR = 5;

/** The positions of one line that a near search has yet to look at. */
export class NearPlaces {
  /** [position] 1: yet to look at */
  readonly awake: Uint8Array;
  /** Without changes only the cuts of a move matter: between them orders shift as they are. */
  private readonly cutsOnly: boolean;

  constructor(n: number, cutsOnly: boolean) {
    this.awake = new Uint8Array(n);
    this.cutsOnly = cutsOnly;
  }

  /** Those in or near [from, to), no other. */
  begin(from: number, to: number): void {
    this.awake.fill(0);
    this.wake(from, to);
  }

  /** Also those near a move, after which the blocks [i, a), [a, j) and [j, k) follow each other in reverse order. */
  wakeMoved(i: number, a: number, j: number, k: number): void {
    if (!this.cutsOnly) {
      this.wake(i, k);
      return;
    }
    for (const cut of [i, i + k - j, i + k - a, k]) this.wake(cut, cut + 1);
  }

  private wake(from: number, to: number): void {
    this.awake.fill(1, Math.max(0, from - NEAR), to + NEAR);
  }
}
