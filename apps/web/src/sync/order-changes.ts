import { OrderBookRevision, type OrderChange } from "@formweek/contracts";
import { useMutation, useQueryClient, type UseMutationResult } from "@tanstack/react-query";
import { call, type CallError } from "./client.ts";
import { keys } from "./queries.ts";

/** Changes orders, all or none. The book is fetched again also after a refusal: it is then another than was seen. */
export function useChangeOrders(
  plantId: string,
): UseMutationResult<OrderBookRevision, CallError, readonly OrderChange[]> {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (changes) =>
      call({
        path: `/plants/${encodeURIComponent(plantId)}/orders/changes`,
        answer: OrderBookRevision,
        method: "POST",
        body: { changes },
      }),
    onSettled: () => client.invalidateQueries({ queryKey: keys.orders(plantId) }),
  });
}
