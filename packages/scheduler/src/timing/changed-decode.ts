import { copyState, takeState, type DecoderState } from "./decoder-state.ts";
import type { Decoder } from "./decoder.ts";
import type { Sequences } from "./sequences.ts";

/** States kept over a whole decode of many orders. */
const STATES = 24;
/** Steps between two states at the least: to keep one costs as much as a few steps. */
const LEAST_STRIDE = 16;

/** Price of lateness over its full one, and the money above which nothing more is wanted. */
interface PricedLimit {
  readonly lateScale: number;
  readonly limit: number;
}

/**
 * Times plans that differ from one that was kept in some lines only, from a position on each: it goes on from the last state of
 * the kept plan that has none of the changed runs, nor one that was next, behind it. The answer is that of a whole decode.
 */
export class ChangedDecode {
  private readonly decoder: Decoder;
  /** steps between two states */
  private readonly stride: number;
  /** states of the kept plan, in order, and how many there are; the first is before any step */
  private readonly kept: (DecoderState | undefined)[] = [];
  private keptCount = 0;
  /** states of the plan timed last, by the same number: those before `triedFrom` are the kept plan's */
  private readonly tried: (DecoderState | undefined)[] = [];
  private triedFrom = 0;
  private triedCount = 0;

  constructor(
    decoder: Decoder,
    stride = Math.max(LEAST_STRIDE, Math.ceil(decoder.problem.jobs.count / STATES)),
  ) {
    this.decoder = decoder;
    this.stride = stride;
  }

  /** As `Decoder.decode`, of the whole plan. */
  whole(sequences: Sequences, ask: PricedLimit): number {
    return this.from(0, sequences, ask);
  }

  /**
   * As `Decoder.decode`, of a plan that has the kept one's runs before `changedFrom[line]`, and all of its runs where that is below
   * 0. A lot that other lines run in both has the same pieces in both and takes its turn alike.
   */
  changed(sequences: Sequences, changedFrom: Int32Array, ask: PricedLimit): number {
    let last = this.keptCount - 1;
    while (last > 0 && !isBefore(this.kept[last]!, changedFrom)) last--;
    return this.from(Math.max(0, last), sequences, ask);
  }

  /** The plan timed last, to its end, is the kept one from now on. */
  keep(): void {
    for (let i = this.triedFrom; i < this.triedCount; i++) {
      const state = this.kept[i];
      this.kept[i] = this.tried[i];
      this.tried[i] = state;
    }
    this.keptCount = this.triedCount;
  }

  private from(start: number, sequences: Sequences, ask: PricedLimit): number {
    const first = start === 0 ? null : this.kept[start]!;
    // the state before the first step is that of every plan: what stands at number 0 is never gone on from
    this.triedFrom = start + 1;
    this.triedCount = start + 1;
    return this.decoder.decodeOn(sequences, first, { ...ask, stride: this.stride }, (state) => {
      this.note(state);
    });
  }

  private note(state: DecoderState): void {
    const into = this.tried[this.triedCount];
    if (into === undefined) this.tried[this.triedCount] = copyState(this.decoder.problem, state);
    else takeState(state, into);
    this.triedCount++;
  }
}

/** True when no line has come to a changed run, nor has one as its next. */
function isBefore(state: DecoderState, changedFrom: Int32Array): boolean {
  for (let line = 0; line < changedFrom.length; line++)
    if (changedFrom[line]! >= 0 && state.next[line]! >= changedFrom[line]!) return false;
  return true;
}
