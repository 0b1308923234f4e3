import {
  AlternativesResponse,
  PromiseResponse,
  SurenessResponse,
  type OfferKind,
  type PromiseEnquiry,
} from "@formweek/contracts";
import { keepPreviousData, useQuery, type UseQueryResult } from "@tanstack/react-query";
import { call } from "./client.ts";
import { keys } from "./queries.ts";

/** Nothing is offered before now: an answer that is looked at for long is asked for anew. */
const freshForMs = 60_000;

const pathOf = (plantId: string): string => `/plants/${encodeURIComponent(plantId)}/promises`;

/**
 * The first answer to an enquiry. While another is worked out the one before stays as a placeholder, and an answer that comes after
 * a newer question is dropped with its request.
 */
export function usePromise(plantId: string, enquiry: PromiseEnquiry | null): UseQueryResult<PromiseResponse> {
  return useQuery({
    queryKey: [...keys.promises(plantId), "answer", enquiry],
    enabled: enquiry !== null,
    placeholderData: keepPreviousData,
    refetchInterval: freshForMs,
    retry: false,
    queryFn: ({ signal }) =>
      call({ path: pathOf(plantId), answer: PromiseResponse, method: "POST", body: { ...enquiry }, signal }),
  });
}

/** Other ways beside the first answer; asked for once that is there (`enquiry` not null). */
export function useAlternatives(
  plantId: string,
  enquiry: PromiseEnquiry | null,
): UseQueryResult<AlternativesResponse> {
  return useQuery({
    queryKey: [...keys.promises(plantId), "alternatives", enquiry],
    enabled: enquiry !== null,
    placeholderData: keepPreviousData,
    retry: false,
    queryFn: ({ signal }) =>
      call({
        path: `${pathOf(plantId)}/alternatives`,
        answer: AlternativesResponse,
        method: "POST",
        body: { ...enquiry },
        signal,
      }),
  });
}

/** How sure an offer is; asked for once the offer is there (`enquiry` not null). */
export function useSureness(
  plantId: string,
  enquiry: PromiseEnquiry | null,
  kind: OfferKind,
): UseQueryResult<SurenessResponse> {
  return useQuery({
    queryKey: [...keys.promises(plantId), "sureness", kind, enquiry],
    enabled: enquiry !== null,
    placeholderData: keepPreviousData,
    retry: false,
    queryFn: ({ signal }) =>
      call({
        path: `${pathOf(plantId)}/sureness`,
        answer: SurenessResponse,
        method: "POST",
        body: { enquiry, kind },
        signal,
      }),
  });
}
