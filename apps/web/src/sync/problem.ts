import { PlanProblemResponse } from "@formweek/contracts";
import { useQuery, type UseQueryResult } from "@tanstack/react-query";
import type { ProblemData } from "@formweek/scheduler";
import { call } from "./client.ts";
import { keys } from "./queries.ts";

/** The problem in which a plan is worked on. The server writes it from the engine's own types: typed here, not parsed twice. */
export function useProblem(
  plantId: string,
  planId: string,
  isWanted: boolean,
): UseQueryResult<{ readonly problem: ProblemData; readonly frozenOrderIds: readonly string[] }> {
  return useQuery({
    queryKey: keys.problem(plantId, planId),
    enabled: isWanted,
    staleTime: Infinity,
    queryFn: async ({ signal }) => {
      const path = `/plants/${encodeURIComponent(plantId)}/plans/${encodeURIComponent(planId)}/problem`;
      const { problem, frozenOrderIds } = await call({ path, answer: PlanProblemResponse, signal });
      return { problem: problem as unknown as ProblemData, frozenOrderIds };
    },
  });
}
