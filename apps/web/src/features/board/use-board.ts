import { createContext, useContext, useSyncExternalStore } from "react";
import type { BoardState } from "../../state/board-state.ts";
import { boardStore, type BoardStore } from "../../state/store.ts";
import { runEffect } from "../../sync/run-effects.ts";

const BoardContext = createContext<BoardStore>(boardStore(runEffect));
export const BoardProvider = BoardContext.Provider;

export function useBoardStore(): BoardStore {
  return useContext(BoardContext);
}

/** A part of the board's state; `select` must answer the same reference while that part is the same. */
export function useBoard<Part>(select: (state: BoardState) => Part): Part {
  const store = useBoardStore();
  return useSyncExternalStore(store.subscribe, () => select(store.read()));
}
