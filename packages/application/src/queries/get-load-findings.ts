import { currentLoad } from "../load/current-load.ts";
import { loadFindings, type LoadFindings } from "../load/load-findings.ts";
import { ok } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** The bottleneck of a plant, what is loaded beyond its limit and which sheet runs out, each with what would help. */
export const getLoadFindings: UseCase<PlantInput, LoadFindings> = {
  role: "viewer",
  run: async (ports, { plantId }) => {
    const current = await currentLoad(ports, plantId);
    return current.ok ? ok(loadFindings(current.value.load)) : current;
  },
};
