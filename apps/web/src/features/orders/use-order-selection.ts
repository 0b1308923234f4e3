import { useMemo, useRef, useState } from "react";
import type { BookedOrder } from "@formweek/contracts";
import { rangeOf } from "../../kernels/order-range.ts";

/** Which of the orders shown are selected; what is filtered out is not changed unseen. */
export interface OrderSelection {
  readonly selected: readonly BookedOrder[];
  readonly isAll: boolean;
  readonly has: (orderId: string) => boolean;
  /** Selects an order or takes it out; a range does so from the one before on. */
  readonly toggle: (orderId: string, isRange: boolean) => void;
  readonly toggleAll: () => void;
  readonly clear: () => void;
}

export function useOrderSelection(rows: readonly BookedOrder[]): OrderSelection {
  const [ids, setIds] = useState<ReadonlySet<string>>(new Set());
  const lastId = useRef<string | null>(null);
  const selected = useMemo(() => rows.filter((order) => ids.has(order.id)), [rows, ids]);
  const isAll = rows.length > 0 && selected.length === rows.length;
  return {
    selected,
    isAll,
    has: (orderId) => ids.has(orderId),
    toggle: (orderId, isRange) => {
      const range = isRange ? rangeOf(rows, lastId.current, orderId) : [orderId];
      lastId.current = orderId;
      const isIn = !ids.has(orderId);
      setIds((before) => {
        const next = new Set(before);
        for (const id of range) {
          if (isIn) next.add(id);
          else next.delete(id);
        }
        return next;
      });
    },
    toggleAll: () => setIds(isAll ? new Set() : new Set(rows.map((order) => order.id))),
    clear: () => setIds(new Set()),
  };
}
