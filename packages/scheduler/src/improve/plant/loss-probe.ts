/** Steps in which the size of a usual loss is measured before annealing begins. */
const PROBING_STEPS = 40;
/** Where no step lost anything, money. */
const LEAST_LOSS = 1e-6;

/** Measures what a step that makes the plan dearer usually costs: annealing's temperatures are shares of that. */
export class LossProbe {
  private steps = 0;
  private readonly losses: number[] = [];

  get isDone(): boolean {
    return this.steps >= PROBING_STEPS;
  }

  /** Money by which a step made the plan dearer; Infinity where that is not known. */
  note(loss: number): void {
    if (loss > 0 && loss < Infinity) this.losses.push(loss);
    this.steps++;
  }

  /** The median, money: now and then a step leaves an order out, and its price would swamp a mean. */
  usual(): number {
    const sorted = this.losses.sort((a, b) => a - b);
    return sorted[sorted.length >> 1] ?? LEAST_LOSS;
  }
}
