import type { Random } from "../../chance/random.ts";
import type { CompiledProblem } from "../../problem/compiled-problem.ts";
import { InsertionFloor } from "../../timing/insertion-floor.ts";
import type { LineModel } from "../../timing/line-model.ts";
import { allowedPositions, type Sequences } from "../../timing/sequences.ts";

/** One place in so many is passed over: it keeps greedy insertion from always doing the same. */
const BLINK = 64;

/**
 * Cheapest place for a lot by the line model. All places are rated by the first floor of their price; from the lowest up they
 * then get their second floor and are judged in full, until no floor is below the best price found: a few of hundreds.
 */
export class BestPlace {
  /** Found: option or -1, and position. */
  option = -1;
  position = 0;
  private readonly problem: CompiledProblem;
  private readonly sequences: Sequences;
  private readonly model: LineModel;
  private readonly random: Random;
  private readonly floor: InsertionFloor;
  private floors = new Float64Array(256);
  private options = new Int32Array(256);
  private positions = new Int32Array(256);
  /** 1 where the floor counts what is shifted, too */
  private refined = new Uint8Array(256);
  private count = 0;

  constructor(problem: CompiledProblem, sequences: Sequences, model: LineModel, random: Random) {
    this.problem = problem;
    this.sequences = sequences;
    this.model = model;
    this.random = random;
    this.floor = new InsertionFloor(problem, sequences, model);
  }

  /** Looks for the cheapest place that costs less than leaving the lot's order out. */
  find(lot: number): void {
    const { jobs, lots } = this.problem;
    let least = jobs.unplanned[lots.job[lot]!]!;
    this.rate(lot, least);
    this.option = -1;
    for (;;) {
      const next = this.lowest(least);
      if (next < 0) return;
      if (this.refined[next] === 0) {
        this.refine(next);
        continue;
      }
      this.floors[next] = Infinity;
      if (this.option >= 0 && this.random.below(BLINK) === 0) continue;
      const money = this.model.insertion(this.options[next]!, this.positions[next]!, least);
      if (money >= least) continue;
      least = money;
      this.option = this.options[next]!;
      this.position = this.positions[next]!;
    }
  }

  private rate(lot: number, limit: number): void {
    const { firstOption } = this.problem.lots;
    this.count = 0;
    for (let option = firstOption[lot]!; option < firstOption[lot + 1]!; option++) {
      const { first, last } = allowedPositions(this.problem, this.sequences, option);
      this.floor.ask(option);
      this.model.evaluations += last - first + 1;
      for (let position = first; position <= last; position++) {
        const money = this.floor.own(position);
        if (money < limit) this.note(option, position, money);
      }
    }
  }

  private note(option: number, position: number, money: number): void {
    if (this.count === this.floors.length) this.grow();
    this.floors[this.count] = money;
    this.options[this.count] = option;
    this.positions[this.count] = position;
    this.refined[this.count] = 0;
    this.count++;
  }

  private grow(): void {
    const room = 2 * this.floors.length;
    const { floors, options, positions, refined } = this;
    this.floors = new Float64Array(room);
    this.options = new Int32Array(room);
    this.positions = new Int32Array(room);
    this.floors.set(floors);
    this.options.set(options);
    this.positions.set(positions);
    this.refined = new Uint8Array(room);
    this.refined.set(refined);
  }

  /** The place with the lowest floor below the limit, the first of equals; -1 when there is none. */
  private lowest(limit: number): number {
    let least = limit;
    let found = -1;
    for (let i = 0; i < this.count; i++) {
      if (this.floors[i]! >= least) continue;
      least = this.floors[i]!;
      found = i;
    }
    return found;
  }

  private refine(place: number): void {
    this.floor.ask(this.options[place]!);
    this.floors[place] = this.floor.withShift(this.positions[place]!);
    this.refined[place] = 1;
  }
}
