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
  /** places still in question as a binary heap, the lowest floor first, the first of equals */
  private heap = new Int32Array(256);
  private heapSize = 0;

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
    const first = this.lowest();
    if (first < 0) return;
    least = this.judge(first, least);
    this.heapify(first, least);
    while (this.heapSize > 0) {
      const next = this.heap[0]!;
      if (this.floors[next]! >= least) return;
      if (this.refined[next] === 0) {
        this.refine(next);
        this.sink(0);
        continue;
      }
      this.heap[0] = this.heap[--this.heapSize]!;
      this.sink(0);
      if (this.option >= 0 && this.random.below(BLINK) === 0) continue;
      least = this.judge(next, least);
    }
  }

  /** Judges a place in full, and takes it where it costs less than `least`; the least price now. */
  private judge(place: number, least: number): number {
    const money = this.model.insertion(this.options[place]!, this.positions[place]!, least);
    if (money >= least) return least;
    this.option = this.options[place]!;
    this.position = this.positions[place]!;
    return money;
  }

  /** The place with the lowest floor, the first of equals, or -1. */
  private lowest(): number {
    let lowest = -1;
    for (let place = 0; place < this.count; place++)
      if (lowest < 0 || this.floors[place]! < this.floors[lowest]!) lowest = place;
    return lowest;
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
    this.heap = new Int32Array(room);
    this.refined.set(refined);
  }

  /** Puts the places on the heap that may cost less than `least`, all but one. */
  private heapify(judged: number, least: number): void {
    this.heapSize = 0;
    for (let place = 0; place < this.count; place++)
      if (this.floors[place]! < least && place !== judged) this.heap[this.heapSize++] = place;
    for (let i = (this.count >> 1) - 1; i >= 0; i--) this.sink(i);
  }

  /** Moves what stands at a place of the heap down to where it belongs. */
  private sink(from: number): void {
    const { heap, heapSize } = this;
    const moved = heap[from]!;
    let at = from;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= heapSize) break;
      if (child + 1 < heapSize && this.comesBefore(heap[child + 1]!, heap[child]!)) child++;
      if (!this.comesBefore(heap[child]!, moved)) break;
      heap[at] = heap[child]!;
      at = child;
    }
    heap[at] = moved;
  }

  private comesBefore(a: number, b: number): boolean {
    const difference = this.floors[a]! - this.floors[b]!;
    return difference < 0 || (difference === 0 && a < b);
  }

  private refine(place: number): void {
    this.floor.ask(this.options[place]!);
    this.floors[place] = this.floor.withShift(this.positions[place]!);
    this.refined[place] = 1;
  }
}
