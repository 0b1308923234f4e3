import { OrderBookRevision, type OrderChange } from "@formweek/contracts";
import { useMutation, useQueryClient, type UseMutationResult } from "@tanstack/react-query";
import type { z } from "zod";
import { call, type CallError } from "./client.ts";
import { deskOfBrowser } from "./desk.ts";
import { keys } from "./queries.ts";

/** Changes to send, and as what they are kept for taking them back. */
interface SentStep {
  readonly as: "change" | "undo" | "redo";
  readonly of: number | null;
  readonly changes: readonly OrderChange[];
}

/** With a desk, the step is always kept. */
const KeptChange = OrderBookRevision.extend({ step: OrderBookRevision.shape.step.unwrap() });

/** Changes orders, all or none. The book is fetched again also after a refusal: it is then another than was seen. */
export function useChangeOrders(
  plantId: string,
): UseMutationResult<z.infer<typeof KeptChange>, CallError, SentStep> {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ as: kind, of, changes }) =>
      call({
        path: `/plants/${encodeURIComponent(plantId)}/orders/changes`,
        answer: KeptChange,
        method: "POST",
        body: { changes, step: { desk: deskOfBrowser(), kind, of } },
      }),
    onSettled: () => client.invalidateQueries({ queryKey: keys.orders(plantId) }),
  });
}
