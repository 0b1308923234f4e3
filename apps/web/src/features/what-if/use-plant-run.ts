import type { SolveRunResponse } from "@formweek/contracts";
import { isRunning, useSolveRun } from "../../sync/queries.ts";
import { useFollowedSolve } from "../../sync/solves.ts";

/** The plant's run that is going on or was followed last. */
export interface PlantRun {
  readonly run: SolveRunResponse | undefined;
  readonly isGoing: boolean;
}

export function usePlantRun(plantId: string): PlantRun {
  const { data: run } = useSolveRun(plantId, useFollowedSolve(plantId));
  return { run, isGoing: run !== undefined && isRunning(run.state) };
}
