import {
  MOST_SCENARIO_CHANGES,
  Scenario,
  ScenarioListResponse,
  StepResponse,
  type AdoptRequest,
  type ScenarioDraft,
} from "@formweek/contracts";
import {
  useMutation,
  useQuery,
  useQueryClient,
  type QueryClient,
  type UseMutationResult,
  type UseQueryResult,
} from "@tanstack/react-query";
import { call, type CallError } from "./client.ts";
import { rememberOwnStep } from "./own-steps.ts";
import { keys } from "./queries.ts";

/** Changes that one scenario takes. */
export const mostChanges = MOST_SCENARIO_CHANGES;

const pathOf = (plantId: string, scenarioId?: string): string => {
  const all = `/plants/${encodeURIComponent(plantId)}/scenarios`;
  return scenarioId === undefined ? all : `${all}/${encodeURIComponent(scenarioId)}`;
};

/** Every scenario of the plant with what came of it, oldest first. */
export function useScenarios(plantId: string): UseQueryResult<ScenarioListResponse> {
  return useQuery({
    queryKey: keys.scenarios(plantId),
    queryFn: ({ signal }) => call({ path: pathOf(plantId), answer: ScenarioListResponse, signal }),
  });
}

const renew = (client: QueryClient, plantId: string): Promise<void> =>
  client.invalidateQueries({ queryKey: keys.scenarios(plantId) });

/** A scenario to be written: anew, or over the one that was seen. */
export interface WantedScenario {
  readonly over: Pick<Scenario, "id" | "revision"> | null;
  readonly draft: ScenarioDraft;
}

/** Writes a scenario; settled once the list has it. */
export function useWriteScenario(plantId: string): UseMutationResult<Scenario, CallError, WantedScenario> {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ over, draft }) =>
      over === null
        ? call({ path: pathOf(plantId), answer: Scenario, method: "POST", body: { ...draft } })
        : call({
            path: pathOf(plantId, over.id),
            answer: Scenario,
            method: "PUT",
            body: { ...draft, revision: over.revision },
          }),
    onSettled: () => renew(client, plantId),
  });
}

/** Deletes a scenario as it was seen. */
export function useDeleteScenario(plantId: string): UseMutationResult<Scenario, CallError, Scenario> {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ id, revision }) =>
      call({ path: `${pathOf(plantId, id)}?revision=${revision}`, answer: Scenario, method: "DELETE" }),
    onSettled: () => renew(client, plantId),
  });
}

/** A scenario that is to be made in earnest. */
export type WantedAdoption = AdoptRequest & { readonly scenarioId: string };

/** Makes the changes of a scenario in earnest, with its plan; settled once what stands then is known here. */
export function useAdoptScenario(
  plantId: string,
): UseMutationResult<StepResponse, CallError, WantedAdoption> {
  const client = useQueryClient();
  return useMutation({
    mutationKey: keys.step(plantId),
    mutationFn: ({ scenarioId, ...body }) =>
      call({ path: `${pathOf(plantId, scenarioId)}/adoption`, answer: StepResponse, method: "POST", body }),
    onSuccess: ({ revision }) => rememberOwnStep(plantId, revision),
    onSettled: () =>
      Promise.all(
        [
          keys.scenarios,
          keys.workingPlan,
          keys.latestPlan,
          keys.orders,
          keys.plant,
          keys.rates,
          keys.pins,
          keys.load,
          keys.promises,
          keys.problems,
        ].map((keyOf) => client.invalidateQueries({ queryKey: keyOf(plantId) })),
      ),
  });
}
