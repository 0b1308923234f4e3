import type { HeadProfile } from "../problem/compiled-problem.ts";

/** Heads of one pool that are still free, as runs take them: a step function that can be cut. */
export interface HeadLedger {
  /** s, ascending, first 0 */
  readonly at: number[];
  /** hundredths of a head from at[i] until at[i + 1] */
  readonly free: number[];
}

export function resetHeads(ledger: HeadLedger, profile: HeadProfile): void {
  ledger.at.length = 0;
  ledger.free.length = 0;
  for (let i = 0; i < profile.at.length; i++) {
    ledger.at.push(profile.at[i]!);
    ledger.free.push(profile.free[i]!);
  }
}

/** Makes `into` equal to `from`. */
export function copyHeads(from: HeadLedger, into: HeadLedger): void {
  into.at.length = 0;
  into.free.length = 0;
  for (let i = 0; i < from.at.length; i++) {
    into.at.push(from.at[i]!);
    into.free.push(from.free[i]!);
  }
}

/** The step that holds at t >= 0. O(log n). */
export function stepAt(ledger: HeadLedger, t: number): number {
  let low = 0;
  let high = ledger.at.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ledger.at[middle]! <= t) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

function cutAt(ledger: HeadLedger, t: number): number {
  const step = stepAt(ledger, t);
  if (ledger.at[step] === t) return step;
  ledger.at.splice(step + 1, 0, t);
  ledger.free.splice(step + 1, 0, ledger.free[step]!);
  return step + 1;
}

/** Takes `heads` during [from, to). O(n). */
export function takeHeads(
  ledger: HeadLedger,
  span: readonly [from: number, to: number],
  heads: number,
): void {
  if (span[1] <= span[0]) return;
  const first = cutAt(ledger, span[0]);
  const end = cutAt(ledger, span[1]);
  for (let step = first; step < end; step++) ledger.free[step]! -= heads;
}
