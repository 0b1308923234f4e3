import { useEffect, useRef } from "react";
import { useSearchParams } from "wouter";
import type { BoardState } from "../../state/board-state.ts";
import { readBoardAddress, writeBoardAddress } from "../../state/board-address.ts";
import { keptView, wasReloaded } from "../../sync/run-effects.ts";
import { useBoard, useBoardStore } from "./use-board.ts";

/** Browsers bear few changes of the address a second: panning and typing are written once they rest so long. */
const restMs = 300;

/**
 * Keeps filter, rows, time and selected order in the page's address, so that a reload or a sent link shows the same.
 * Filters and rows are steps that Back takes away again; panning, typing and walking are not.
 */
export function useBoardAddress(): void {
  const store = useBoardStore();
  const [address, setAddress] = useSearchParams();
  const isPlanned = useBoard(({ plan }) => plan !== null);
  const isSized = useBoard(({ size }) => size.widthPx > 0);
  const loadedWith = useRef(address.toString());

  useEffect(() => {
    if (!isPlanned) return;
    if (writeBoardAddress(store.read(), address).toString() === address.toString()) return;
    const asked = readBoardAddress(address);
    const isOutrun = address.toString() === loadedWith.current && hasNewerView(store.read());
    store.send({
      kind: "address opened",
      address: isOutrun ? { ...asked, time: "as shown" } : asked,
    });
  }, [address, isPlanned, isSized, store]);

  useEffect(() => {
    if (!isPlanned) return;
    let told = store.read();
    let timer: ReturnType<typeof setTimeout> | undefined;
    const write = (replace: boolean): void => {
      clearTimeout(timer);
      setAddress((before) => writeBoardAddress(store.read(), before), { replace });
    };
    const isWritten = (): boolean => {
      const now = new URLSearchParams(window.location.search);
      return writeBoardAddress(store.read(), now).toString() === now.toString();
    };
    const stop = store.subscribe(() => {
      const state = store.read();
      const isStep = stepOf(state) !== stepOf(told);
      const isMoved = restOf(state) !== restOf(told);
      told = state;
      if (!isStep && !isMoved) return;
      clearTimeout(timer);
      if (isStep && !isWritten()) write(false);
      // Whether the address tells it already is looked at once, not in every frame of a move.
      else if (isMoved) timer = setTimeout(() => isWritten() || write(true), restMs);
    });
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, [isPlanned, setAddress, store]);
}

/** A reload may come before the last move is in the address; the tab keeps every move at once. */
function hasNewerView({ plan }: BoardState): boolean {
  return wasReloaded() && plan !== null && keptView(plan.document.plant.id) !== null;
}

function stepOf({ filter, rowChoice }: BoardState): string {
  return JSON.stringify([{ ...filter, text: "" }, rowChoice]);
}

function restOf({ filter, view, selection }: BoardState): string {
  return JSON.stringify([filter.text, view.startAt, view.secondsPerPx, selection]);
}
