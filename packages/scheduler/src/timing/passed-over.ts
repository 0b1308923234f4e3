import type { Decoder } from "./decoder.ts";
import { removeAt, type Sequences } from "./sequences.ts";

/** Takes every option that the decoder, which timed the sequences last, passed over out of them; true when there were any. */
function dropOnce({ problem, option: running }: Decoder, sequences: Sequences): boolean {
  const { jobs, lots, options } = problem;
  let dropped = false;
  for (let line = 0; line < sequences.at.length; line++) {
    const row = sequences.at[line]!;
    for (let p = sequences.length[line]! - 1; p >= 0; p--) {
      const option = row[p]!;
      if (running[options.lot[option]!] === option) continue;
      const job = options.job[option]!;
      removeAt(sequences, line, p);
      // an order is passed over with all its lots: what is left over is whole
      sequences.pieces.fill(0, lots.firstLot[job], lots.firstLot[job + 1]);
      sequences.pieces[lots.firstLot[job]!] = jobs.pieces[job]!;
      dropped = true;
    }
  }
  return dropped;
}

/**
 * Leaves in the sequences just what runs, so that their plan can be gone on from as it is: an option that is passed over may
 * still have decided which line a mould goes to. The decoder must have timed them last at a finite price, money; the answer
 * is the price without, which may be another, or Infinity where an order is torn by it. O(decode), per round of such options.
 */
export function withoutPassedOver(decoder: Decoder, sequences: Sequences, money: number): number {
  let paid = money;
  while (paid < Infinity && dropOnce(decoder, sequences)) paid = decoder.decode(sequences);
  return paid;
}
