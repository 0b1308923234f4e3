import {
  OrderBookResponse,
  PlanResponse,
  PlantListResponse,
  PlantResponse,
  RatesResponse,
  SolveRunResponse,
  type TableQuery,
} from "@formweek/contracts";
import type { Plant } from "@formweek/capacity-model";
import { useQuery, type UseQueryResult } from "@tanstack/react-query";
import { call, CallError } from "./client.ts";

/** Names of what is kept of each plant; events of the server make them old. */
export const keys = {
  plants: ["plants"] as const,
  plant: (plantId: string) => ["plant", plantId] as const,
  rates: (plantId: string) => ["rates", plantId] as const,
  orders: (plantId: string) => ["orders", plantId] as const,
  bookSteps: (plantId: string) => ["book steps", plantId] as const,
  pins: (plantId: string) => ["pins", plantId] as const,
  holds: (plantId: string) => ["holds", plantId] as const,
  promises: (plantId: string) => ["promises", plantId] as const,
  latestPlan: (plantId: string) => ["latest plan", plantId] as const,
  workingPlan: (plantId: string) => ["working plan", plantId] as const,
  step: (plantId: string) => ["step", plantId] as const,
  publications: (plantId: string) => ["publications", plantId] as const,
  plan: (plantId: string, planId: string) => ["plan", plantId, planId] as const,
  comparison: (plantId: string, fromId: string, toId: string) =>
    ["comparison", plantId, fromId, toId] as const,
  olderSteps: (plantId: string, before: number) => ["older steps", plantId, before] as const,
  load: (plantId: string) => ["load", plantId] as const,
  scenarios: (plantId: string) => ["scenarios", plantId] as const,
  problems: (plantId: string) => ["problem", plantId] as const,
  problem: (plantId: string, planId: string) => ["problem", plantId, planId] as const,
  solve: (plantId: string, runId: string) => ["solve", plantId, runId] as const,
  provisional: (plantId: string, runId: string) => ["provisional", plantId, runId] as const,
};

const at = (plantId: string, rest: string): string => `/plants/${encodeURIComponent(plantId)}${rest}`;

export function usePlants(): UseQueryResult<PlantListResponse> {
  return useQuery({
    queryKey: keys.plants,
    queryFn: ({ signal }) => call({ path: "/plants", answer: PlantListResponse, signal }),
    // Without a plant there are no events that would tell of the server's return.
    refetchInterval: ({ state }) => (state.status === "error" ? 5000 : false),
  });
}

/** A plant's records. The server checks them by the capacity model's own schema, so here they are typed, not parsed twice. */
export function usePlant(
  plantId: string,
): UseQueryResult<{ readonly revision: number; readonly plant: Plant }> {
  return useQuery({
    queryKey: keys.plant(plantId),
    queryFn: async ({ signal }) => {
      const { revision, plant } = await call({ path: at(plantId, ""), answer: PlantResponse, signal });
      return { revision, plant: plant as unknown as Plant };
    },
  });
}

export function useRates(plantId: string): UseQueryResult<RatesResponse> {
  return useQuery({
    queryKey: keys.rates(plantId),
    queryFn: ({ signal }) => call({ path: at(plantId, "/rates"), answer: RatesResponse, signal }),
  });
}

export function useOrders(plantId: string): UseQueryResult<OrderBookResponse> {
  return useQuery({
    queryKey: keys.orders(plantId),
    queryFn: ({ signal }) => call({ path: at(plantId, "/orders"), answer: OrderBookResponse, signal }),
  });
}

/** The newest plan; null when none has been made. */
export function useLatestPlan(plantId: string): UseQueryResult<PlanResponse | null> {
  return useQuery({
    queryKey: keys.latestPlan(plantId),
    queryFn: async ({ signal }) => {
      try {
        return await call({ path: at(plantId, "/plans/latest"), answer: PlanResponse, signal });
      } catch (cause) {
        if (cause instanceof CallError && cause.problem.status === 404) return null;
        throw cause;
      }
    },
  });
}

/** A solve as it stands; asked again every second while it runs, for when no event arrives. */
export function useSolveRun(plantId: string, runId: string | null): UseQueryResult<SolveRunResponse> {
  return useQuery({
    queryKey: keys.solve(plantId, runId ?? ""),
    enabled: runId !== null,
    queryFn: ({ signal }) =>
      call({
        path: at(plantId, `/solves/${encodeURIComponent(runId ?? "")}`),
        answer: SolveRunResponse,
        signal,
      }),
    refetchInterval: ({ state }) => (state.data === undefined || isRunning(state.data.state) ? 1000 : false),
  });
}

export function isRunning(state: SolveRunResponse["state"]): boolean {
  return state === "queued" || state === "running";
}

/** Address of a file that the server writes. */
export function exportAddress(plantId: string, file: "orders.csv" | "orders.xlsx" | "plant.xlsx"): string {
  return `/api${at(plantId, `/${file}`)}`;
}

/** Address of a plan's runs as a table. */
export function planTableAddress(
  { planId, document }: Pick<PlanResponse, "planId" | "document">,
  format: TableQuery["format"],
  language: TableQuery["language"],
): string {
  const path = `/plans/${encodeURIComponent(planId)}/table`;
  return `/api${at(document.plant.id, `${path}?format=${format}&language=${language}`)}`;
}

/** Address of the order book with each order's state as a table. */
export function orderTableAddress(
  plantId: string,
  format: TableQuery["format"],
  language: TableQuery["language"],
): string {
  return `/api${at(plantId, `/orders/table?format=${format}&language=${language}`)}`;
}
