import { createContext, useContext, useEffect, useMemo, useReducer, useRef } from "react";
import type { OrderChange } from "@formweek/contracts";
import { zoneClock, type ZoneClock } from "../../kernels/zone-clock.ts";
import { nextStep, noEdits, reduceBook, type AskedStep, type BookEdits } from "../../state/book-edits.ts";
import type { CallError } from "../../sync/client.ts";
import { useBookSteps } from "../../sync/book-steps.ts";
import { useChangeOrders } from "../../sync/order-changes.ts";

/** A planner's work on the order book, and what can be asked for next. */
export interface BookWork extends BookEdits {
  /** The plant's clock, by which times are read and written. */
  readonly clock: ZoneClock;
  /** Why the refused step was refused. */
  readonly failure: CallError | null;
  readonly isBusy: boolean;
  /** Sends changes, in turn while others are under way. */
  readonly change: (changes: readonly OrderChange[]) => void;
  readonly take: (wanted: "undo" | "redo") => void;
  /** Sends what was decided instead of the refused step. */
  readonly decide: (changes: readonly OrderChange[]) => void;
  /** Notes changes that an import made, as a step to take back; none where they are too many to be known here. */
  readonly tookOver: (changes: readonly OrderChange[], number: number | null) => void;
  readonly putAway: () => void;
  readonly leaveToOthers: () => void;
}

const BookContext = createContext<BookWork | null>(null);
export const BookWorkProvider = BookContext.Provider;

/** The work on the book that is open. */
export function useBookWork(): BookWork {
  const work = useContext(BookContext);
  if (work === null) throw new Error("useBookWork outside of an open order book");
  return work;
}

/** Begins work on a plant's order book. */
export function useOpenBook(plantId: string, timeZone: string): BookWork {
  const clock = useMemo(() => zoneClock(timeZone), [timeZone]);
  const [edits, tell] = useReducer(reduceBook, noEdits);
  const { mutate, error } = useChangeOrders(plantId);
  const { data: steps, refetch } = useBookSteps(plantId);
  useEffect(() => {
    if (steps !== undefined) tell({ kind: "opened", steps });
  }, [steps]);
  const { asked } = edits;
  const sent = useRef<AskedStep | null>(null);
  useEffect(() => {
    if (asked === null || sent.current === asked) return;
    sent.current = asked;
    mutate(asked, {
      onSuccess: ({ step }) => tell({ kind: "accepted", number: step }),
      onError: () => tell({ kind: "refused" }),
    });
  }, [asked, mutate]);
  const send = (step: AskedStep): void => {
    if (step.changes.length > 0) tell({ kind: "asked", step });
  };
  return {
    ...edits,
    clock,
    failure: edits.refused === null ? null : error,
    isBusy: asked !== null,
    change: (changes) => send({ as: "change", changes, of: null }),
    take: (wanted) => {
      const step = nextStep(edits, wanted);
      if (step !== null) send(step);
    },
    decide: (changes) => send({ as: edits.refused?.as ?? "change", changes, of: edits.refused?.of ?? null }),
    tookOver: (changes, number) => {
      if (number === null) return;
      if (changes.length > 0) tell({ kind: "taken over", changes, number });
      else void refetch();
    },
    putAway: () => tell({ kind: "put away" }),
    leaveToOthers: () => tell({ kind: "left to others" }),
  };
}
