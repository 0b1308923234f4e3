import { ProvisionalResponse, type ProvisionalPlan } from "@formweek/contracts";
import { useQuery, useQueryClient, type UseQueryResult } from "@tanstack/react-query";
import { useEffect } from "react";
import { call } from "./client.ts";
import { keys } from "./queries.ts";

/** What is looked at: a run's best plan so far, by the number of the newest one that is known of. */
export interface WantedProvisional {
  readonly runId: string;
  readonly number: number;
}

/**
 * The best plan so far of a run; asked for again when a newer one is known of, one call at a time. What was seen last stays once the
 * run has ended.
 */
export function useProvisional(
  plantId: string,
  wanted: WantedProvisional | null,
): UseQueryResult<ProvisionalPlan | null> {
  const client = useQueryClient();
  const queryKey = keys.provisional(plantId, wanted?.runId ?? "");
  const answer = useQuery({
    queryKey,
    enabled: wanted !== null,
    staleTime: Infinity,
    gcTime: 0,
    queryFn: async ({ signal }) => {
      const runId = encodeURIComponent(wanted?.runId ?? "");
      const path = `/plants/${encodeURIComponent(plantId)}/solves/${runId}/plan`;
      const { plan } = await call({ path, answer: ProvisionalResponse, signal });
      return plan ?? client.getQueryData<ProvisionalPlan>(queryKey) ?? null;
    },
  });
  const { data, isFetching, refetch } = answer;
  const isOld = wanted !== null && data !== undefined && (data?.number ?? 0) < wanted.number;
  useEffect(() => {
    if (isOld && !isFetching) void refetch();
  }, [isOld, isFetching, refetch]);
  return answer;
}
