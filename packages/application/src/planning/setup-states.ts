import { setupIdentity, stateMountedOn, stateToMake, strippedState } from "@formweek/capacity-model";
import type { LineState, Making, Plant } from "@formweek/capacity-model";
import type { SetupState } from "@formweek/scheduler";
import { textHash } from "./input-hash.ts";

/**
 * The states that lines of one problem can be in, in order of first appearance; each with its stripped twin. Their ids come
 * from what they are, so that a plan finds its set-ups again when the orders have changed.
 */
export class SetupStates {
  readonly #byIdentity = new Map<string, number>();
  readonly #states: LineState[] = [];

  /** Id of the state in which a product is made. */
  ofMaking(making: Making): string {
    return this.#idOf(stateToMake(making));
  }

  /** Id of the state that a line is in now. */
  ofMounted(line: Plant["lines"][number], plant: Plant): string {
    return this.#idOf(stateMountedOn(line, plant));
  }

  /** States in the order of their indices. */
  get states(): readonly LineState[] {
    return this.#states;
  }

  /** The scheduler's records, in the same order. */
  records(): readonly SetupState[] {
    return this.#states.map((state) => ({
      id: this.#idOf(state),
      mouldId: state.mould?.id ?? null,
      sheetId: state.sheet?.id ?? null,
      strippedId: this.#idOf(strippedState(state)),
    }));
  }

  #idOf(state: LineState): string {
    this.#indexOf(state);
    return `S${textHash(setupIdentity(state))}`;
  }

  #indexOf(state: LineState): number {
    const identity = setupIdentity(state);
    const known = this.#byIdentity.get(identity);
    if (known !== undefined) return known;
    const index = this.#states.length;
    this.#byIdentity.set(identity, index);
    this.#states.push(state);
    this.#indexOf(strippedState(state));
    return index;
  }
}
