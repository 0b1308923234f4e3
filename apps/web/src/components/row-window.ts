import { useVirtualizer, type Virtualizer } from "@tanstack/react-virtual";
import { useLayoutEffect, type RefObject } from "react";
import { densityChoice } from "../sync/density.ts";
import { useKeptChoice } from "../sync/use-kept-choice.ts";

/** Height of a row of a long table; the styles name the same. */
const rowPx = { roomy: 37, compact: 30 } as const;

/** The rows of a long table that are in sight, with some above and below. */
export function useRowWindow(
  count: number,
  scroller: RefObject<HTMLDivElement | null>,
): Virtualizer<HTMLDivElement, Element> {
  const height = rowPx[useKeptChoice(densityChoice)];
  const virtual = useVirtualizer({
    count,
    getScrollElement: () => scroller.current,
    estimateSize: () => height,
    overscan: 14,
  });
  useLayoutEffect(() => virtual.measure(), [virtual, height]);
  return virtual;
}
