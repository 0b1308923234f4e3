import { changeBetween } from "@formweek/capacity-model";
import type { LineState, Plant } from "@formweek/capacity-model";
import { changeClassKey, changeTerms } from "../planning/change-matrix.ts";

/** What a change is expected to take: the line stands so long, a setter team is bound so long. */
export interface ExpectedChange {
  readonly machineSeconds: number;
  readonly teamSeconds: number;
}

const NO_CHANGE: ExpectedChange = { machineSeconds: 0, teamSeconds: 0 };

/** Orders that stand for all that may have run before. */
const MOST_BEFORE = 24;

/**
 * Mean change into a state over the orders that may have run on the line before, each as likely as the other; where the same
 * set-up ran, nothing changes. With many orders, twenty-four evenly picked from them stand for all. `before`: a state an order.
 */
export class ExpectedChanges {
  readonly #plant: Plant;
  readonly #before: readonly LineState[];
  readonly #known = new Map<string, Map<LineState, ExpectedChange>>();

  constructor(plant: Plant, before: readonly LineState[]) {
    this.#plant = plant;
    const step = Math.max(1, before.length / MOST_BEFORE);
    const picked = Math.min(before.length, MOST_BEFORE);
    this.#before = Array.from(
      { length: picked },
      (_, index) => before[Math.floor(index * step)] as LineState,
    );
  }

  /** Nothing where no change rules hold for the line. */
  into(line: Plant["lines"][number], to: LineState): ExpectedChange {
    const terms = changeTerms(this.#plant, line);
    if (terms === null || this.#before.length === 0) return NO_CHANGE;
    const key = changeClassKey(this.#plant, terms);
    const ofClass = this.#known.get(key) ?? new Map<LineState, ExpectedChange>();
    this.#known.set(key, ofClass);
    const known = ofClass.get(to);
    if (known !== undefined) return known;
    const changes = this.#before.map((from) => changeBetween({ ...terms, from, to }));
    const mean = (secondsOf: (change: NonNullable<(typeof changes)[number]>) => number): number =>
      changes.reduce((sum, change) => sum + (change === null ? 0 : secondsOf(change)), 0) / changes.length;
    const expected = {
      machineSeconds: mean((change) => change.machineSeconds),
      teamSeconds: mean((change) => change.teamSeconds),
    };
    ofClass.set(to, expected);
    return expected;
  }
}
