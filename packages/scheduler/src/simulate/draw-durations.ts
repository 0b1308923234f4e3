import { exponential, lognormal } from "../chance/distributions.ts";
import type { Random } from "../chance/random.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { lotSeconds, type DrawnDurations, type Sequences } from "../timing/sequences.ts";
import type { LineFailures, Spreads } from "./simulation.ts";

/** Later than any horizon: a run that long is never done. */
const LONGEST_RUN = 1_000_000_000;

/** A lot that is played: where it stands and how long it runs as planned. */
interface PlayedLot {
  readonly lot: number;
  readonly seconds: number;
  readonly failures: LineFailures | null;
}

/** Seconds of repairs during so many seconds of running: as many as exponential times between failures leave room for. */
function repairSeconds(
  running: number,
  { meanBetweenSeconds, meanRepairSeconds }: LineFailures,
  random: Random,
): number {
  let repairs = 0;
  for (let at = meanBetweenSeconds * exponential(random); at < running;) {
    repairs += meanRepairSeconds * exponential(random);
    if (repairs >= LONGEST_RUN) return LONGEST_RUN;
    at += meanBetweenSeconds * exponential(random);
  }
  return repairs;
}

/** Draws how long things take in one play after the other. */
export class DurationDraws {
  readonly drawn: DrawnDurations;
  private readonly lots: readonly PlayedLot[];
  private readonly random: Random;
  private readonly failuresInRates: boolean;
  private readonly runFactor: (random: Random) => number;
  private readonly changeFactor: (random: Random) => number;

  constructor(problem: CompiledProblem, sequences: Sequences, spreads: Spreads, random: Random) {
    const { data, lots, options, lines } = problem;
    this.random = random;
    this.failuresInRates = spreads.failuresInRates;
    this.runFactor = lognormal(spreads.runVariation);
    this.changeFactor = lognormal(spreads.changeVariation);
    this.drawn = {
      run: new Int32Array(lots.count),
      change: new Float64Array(lots.count).fill(1),
      stripping: new Float64Array(lines.count).fill(1),
    };
    const failures = data.lines.map(({ id }) => spreads.failures.get(id) ?? null);
    const played: PlayedLot[] = [];
    for (let line = 0; line < lines.count; line++)
      for (const option of sequences.at[line]!.subarray(0, sequences.length[line]))
        played.push({
          lot: options.lot[option]!,
          seconds: lotSeconds(problem, sequences, option),
          failures: failures[line]!,
        });
    this.lots = played;
  }

  /** The next play's durations, in `drawn`. */
  next(): void {
    const { drawn, random } = this;
    for (const { lot, seconds, failures } of this.lots) {
      drawn.change[lot] = this.changeFactor(random);
      drawn.run[lot] = Math.min(LONGEST_RUN, Math.round(this.runOf(seconds, failures)));
    }
    for (let line = 0; line < drawn.stripping.length; line++)
      drawn.stripping[line] = this.changeFactor(random);
  }

  private runOf(planned: number, failures: LineFailures | null): number {
    const running = planned * this.runFactor(this.random);
    if (failures === null) return running;
    const { meanBetweenSeconds: between, meanRepairSeconds: repair } = failures;
    const alone = this.failuresInRates ? (running * between) / (between + repair) : running;
    return alone + repairSeconds(alone, failures, this.random);
  }
}
