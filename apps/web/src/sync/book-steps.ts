import { BookStepsResponse } from "@formweek/contracts";
import { useQuery, type UseQueryResult } from "@tanstack/react-query";
import { call } from "./client.ts";
import { deskOfBrowser } from "./desk.ts";
import { keys } from "./queries.ts";

/** What was done to the order book in this browser. Asked for each time the book is opened; the page follows its own steps. */
export function useBookSteps(plantId: string): UseQueryResult<BookStepsResponse> {
  return useQuery({
    queryKey: keys.bookSteps(plantId),
    queryFn: ({ signal }) =>
      call({
        path: `/plants/${encodeURIComponent(plantId)}/orders/steps?desk=${encodeURIComponent(deskOfBrowser())}`,
        answer: BookStepsResponse,
        signal,
      }),
    staleTime: Infinity,
    gcTime: 0,
  });
}
