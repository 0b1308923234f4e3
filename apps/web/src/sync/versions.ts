import {
  PlanComparison,
  PlanResponse,
  PublicationListResponse,
  StepListResponse,
  StepResponse,
} from "@formweek/contracts";
import {
  useInfiniteQuery,
  useMutation,
  useQuery,
  useQueryClient,
  type InfiniteData,
  type UseInfiniteQueryResult,
  type UseMutationResult,
  type UseQueryResult,
} from "@tanstack/react-query";
import { call, type CallError } from "./client.ts";
import { rememberOwnStep } from "./own-steps.ts";
import { keys } from "./queries.ts";

const at = (plantId: string, rest: string): string => `/plants/${encodeURIComponent(plantId)}${rest}`;

/** Plans that were given out, newest first. */
export function usePublications(plantId: string): UseQueryResult<PublicationListResponse> {
  return useQuery({
    queryKey: keys.publications(plantId),
    queryFn: ({ signal }) =>
      call({ path: at(plantId, "/publications"), answer: PublicationListResponse, signal }),
  });
}

/** One plan; plans never change, so it is asked for once. Null asks for none. */
export function usePlan(plantId: string, planId: string | null): UseQueryResult<PlanResponse> {
  return useQuery({
    queryKey: keys.plan(plantId, planId ?? ""),
    enabled: planId !== null,
    staleTime: Infinity,
    queryFn: ({ signal }) =>
      call({
        path: at(plantId, `/plans/${encodeURIComponent(planId ?? "")}`),
        answer: PlanResponse,
        signal,
      }),
  });
}

/** Two plans of a plant; null asks for none. */
export interface PlanPair {
  readonly fromId: string | null;
  readonly toId: string | null;
}

/** What is different between two plans. */
export function useComparison(plantId: string, { fromId, toId }: PlanPair): UseQueryResult<PlanComparison> {
  const pair = [fromId ?? "", toId ?? ""] as const;
  return useQuery({
    queryKey: keys.comparison(plantId, ...pair),
    enabled: fromId !== null && toId !== null,
    staleTime: Infinity,
    queryFn: ({ signal }) =>
      call({
        path: at(plantId, `/plans/${encodeURIComponent(pair[0])}/compare/${encodeURIComponent(pair[1])}`),
        answer: PlanComparison,
        signal,
      }),
  });
}

/** Steps before a revision, page by page; null: not asked for yet. */
export function useOlderSteps(
  plantId: string,
  before: number | null,
): UseInfiniteQueryResult<InfiniteData<StepListResponse>> {
  return useInfiniteQuery({
    queryKey: keys.olderSteps(plantId, before ?? 0),
    enabled: before !== null,
    staleTime: Infinity,
    initialPageParam: before ?? 0,
    queryFn: ({ signal, pageParam }) =>
      call({
        path: at(plantId, `/working-plan/steps?before=${pageParam}`),
        answer: StepListResponse,
        signal,
      }),
    getNextPageParam: (page: StepListResponse) => {
      const last = page.at(-1)?.revision ?? 1;
      return last > 1 ? last : null;
    },
  });
}

/** A plan to be given out or worked on again, with the revision of the working plan that this was decided on. */
export interface WantedPublication {
  readonly revision: number;
  readonly planId: string;
  readonly note: string;
  readonly frozenUntil: string | null;
}
export type WantedRestore = Pick<WantedPublication, "revision" | "planId">;

export function usePublish(plantId: string): UseMutationResult<StepResponse, CallError, WantedPublication> {
  return useStep(plantId, "publish");
}

export function useRestore(plantId: string): UseMutationResult<StepResponse, CallError, WantedRestore> {
  return useStep(plantId, "restore");
}

/** Settled once the plan that stands then is known here, also when the step was refused. */
function useStep<Wanted extends WantedRestore>(
  plantId: string,
  step: "publish" | "restore",
): UseMutationResult<StepResponse, CallError, Wanted> {
  const client = useQueryClient();
  return useMutation({
    mutationKey: keys.step(plantId),
    mutationFn: (wanted: Wanted) =>
      call({
        path: at(plantId, `/working-plan/${step}`),
        answer: StepResponse,
        method: "POST",
        body: { ...wanted },
      }),
    onSuccess: ({ revision }) => rememberOwnStep(plantId, revision),
    onSettled: () =>
      Promise.all(
        [
          keys.workingPlan(plantId),
          keys.latestPlan(plantId),
          keys.orders(plantId),
          keys.publications(plantId),
          keys.problems(plantId),
        ].map((queryKey) => client.invalidateQueries({ queryKey })),
      ),
  });
}
