import { emptyBoard, type BoardState } from "./board-state.ts";
import type { Effect, Intent } from "./intents.ts";
import { reduce } from "./reduce.ts";

export interface BoardStore {
  readonly read: () => BoardState;
  readonly send: (intent: Intent) => void;
  /** Calls back after every change of state; answers how to stop. */
  readonly subscribe: (listener: () => void) => () => void;
  /** Calls back with everything that is to be done outside the board; answers how to stop. */
  readonly onEffect: (run: (effect: Effect) => void) => () => void;
}

/** Holds the board's state: intents in, state out, effects are handed to `run` before the listeners are told. */
export function boardStore(run: (effect: Effect, state: BoardState) => void): BoardStore {
  let state = emptyBoard;
  const listeners = new Set<() => void>();
  const runners = new Set<(effect: Effect) => void>();
  return {
    read: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    onEffect: (runner) => {
      runners.add(runner);
      return () => runners.delete(runner);
    },
    send: (intent) => {
      const { state: next, effects } = reduce(state, intent);
      const isNew = next !== state;
      state = next;
      // Before the listeners: what a trial asks of the coming frame is done before the board is drawn in it.
      for (const effect of effects) {
        run(effect, next);
        for (const runner of runners) runner(effect);
      }
      if (isNew) for (const listener of listeners) listener();
    },
  };
}
