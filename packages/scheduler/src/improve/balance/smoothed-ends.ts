/**
 * The last end made smooth: Σ (T ÷ 10)(C ÷ T)^10 over the ends C of the lines, T the end that is aimed at. It also rewards relief
 * of lines that are not last, and about T a second more costs 1. Powers by products alone, so that all machines agree.
 */
export class SmoothedEnds {
  /** [line] what its end costs now */
  readonly cost: Float64Array;
  /** [line] s that a cost of 1 more allows at the most; the cost is convex, so no later end costs less than this says */
  private readonly secondsPerCost: Float64Array;
  private target = 1;

  constructor(lines: number) {
    this.cost = new Float64Array(lines);
    this.secondsPerCost = new Float64Array(lines).fill(Infinity);
  }

  /** Aims at an end, s; all lines have to be measured after it. */
  aimAt(end: number): void {
    this.target = Math.max(1, end);
  }

  costOf(end: number): number {
    const ratio = end / this.target;
    const square = ratio * ratio;
    const fourth = square * square;
    return (this.target / 10) * fourth * fourth * square;
  }

  measure(line: number, end: number): void {
    const cost = this.costOf(end);
    this.cost[line] = cost;
    this.secondsPerCost[line] = cost > 0 ? end / (10 * cost) : Infinity;
  }

  /** Seconds by which a line may grow before it costs `growth` more: no less than the exact figure, a whole number. */
  room(line: number, growth: number): number {
    // no growth at all on a line without cost is not a number, which "| 0" makes the right answer: no room
    return Math.ceil(Math.min(growth * this.secondsPerCost[line]!, BEYOND)) | 0;
  }
}

/** Beyond every end, s. */
const BEYOND = 1_000_000_000;
