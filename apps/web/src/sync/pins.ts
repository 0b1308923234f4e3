import { PinListResponse, PinsRevision } from "@formweek/contracts";
import {
  useMutation,
  useQuery,
  useQueryClient,
  type UseMutationResult,
  type UseQueryResult,
} from "@tanstack/react-query";
import type { CallError } from "./client.ts";
import { call } from "./client.ts";
import { keys } from "./queries.ts";

/** Holds an order at a place, or frees it (`place` null); `revision` is the one of the list that the planner saw. */
export interface PinChange {
  readonly orderId: string;
  readonly place: { readonly lineId: string; readonly start: string | null } | null;
  readonly revision: number;
}

const pathOf = (plantId: string): string => `/plants/${encodeURIComponent(plantId)}/pins`;

/** The orders that are held. */
export function usePins(plantId: string): UseQueryResult<PinListResponse> {
  return useQuery({
    queryKey: keys.pins(plantId),
    queryFn: ({ signal }) => call({ path: pathOf(plantId), answer: PinListResponse, signal }),
  });
}

/** Holds or frees an order; the list is asked for again also when that failed, since it may have changed meanwhile. */
export function useChangePin(plantId: string): UseMutationResult<PinsRevision, CallError, PinChange> {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ orderId, place, revision }) => {
      const path = `${pathOf(plantId)}/${encodeURIComponent(orderId)}`;
      return place === null
        ? call({ path: `${path}?revision=${revision}`, answer: PinsRevision, method: "DELETE" })
        : call({ path, answer: PinsRevision, method: "PUT", body: { ...place, revision } });
    },
    onSettled: () => client.invalidateQueries({ queryKey: keys.pins(plantId) }),
  });
}
