import {
  HoldChanged,
  HoldListResponse,
  OrderHoldResponse,
  type Hold,
  type HoldRequest,
} from "@formweek/contracts";
import {
  useMutation,
  useQuery,
  useQueryClient,
  type QueryClient,
  type UseMutationResult,
  type UseQueryResult,
} from "@tanstack/react-query";
import type { CallError } from "./client.ts";
import { call } from "./client.ts";
import { keys } from "./queries.ts";

const pathOf = (plantId: string): string => `/plants/${encodeURIComponent(plantId)}/holds`;

/** What is held for customers, and what became of the last holds. */
export function useHolds(plantId: string): UseQueryResult<HoldListResponse> {
  return useQuery({
    queryKey: keys.holds(plantId),
    queryFn: ({ signal }) => call({ path: pathOf(plantId), answer: HoldListResponse, signal }),
  });
}

/** A hold changes what is planned, what can be promised, and the steps of the working plan. */
async function renew(client: QueryClient, plantId: string): Promise<void> {
  await Promise.all(
    [keys.holds, keys.promises, keys.workingPlan, keys.latestPlan, keys.orders].map((keyOf) =>
      client.invalidateQueries({ queryKey: keyOf(plantId) }),
    ),
  );
}

/** Takes the capacity of an offer. The same key again never holds twice: a silent server may be asked again with it. */
export function useHold(plantId: string): UseMutationResult<HoldChanged, CallError, HoldRequest> {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (request) =>
      call({ path: pathOf(plantId), answer: HoldChanged, method: "POST", body: { ...request } }),
    onSettled: () => void renew(client, plantId),
  });
}

/** Gives held capacity back. */
export function useReleaseHold(plantId: string): UseMutationResult<HoldChanged, CallError, Hold> {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ holdId }) =>
      call({
        path: `${pathOf(plantId)}/${encodeURIComponent(holdId)}/release`,
        answer: HoldChanged,
        method: "POST",
      }),
    onSettled: () => void renew(client, plantId),
  });
}

/** A hold that a customer orders; `revision` is the order book's that this was decided on. */
export interface OrderedHold {
  readonly holdId: string;
  readonly orderNumber: string;
  readonly revision: number;
}

/** Makes a hold an order of the book. */
export function useOrderHold(plantId: string): UseMutationResult<OrderHoldResponse, CallError, OrderedHold> {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ holdId, ...body }) =>
      call({
        path: `${pathOf(plantId)}/${encodeURIComponent(holdId)}/order`,
        answer: OrderHoldResponse,
        method: "POST",
        body,
      }),
    onSettled: () => void renew(client, plantId),
  });
}
