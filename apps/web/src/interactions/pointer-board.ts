import type { BoardState } from "../state/board-state.ts";
import type { Intent } from "../state/intents.ts";

/** What the pointer needs of the board. */
export interface PointerBoard {
  readonly read: () => BoardState;
  readonly send: (intent: Intent) => void;
}
