import { planTable } from "../export/plan-table.ts";
import type { TableLanguage } from "../export/table-words.ts";
import { planNotFound, plantNotFound } from "../not-found.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { workingPlanOf } from "./working-plan-of.ts";
import { fileDate, fileOf, fileStem, type TableFormat, type WrittenFile } from "./written-file.ts";

/** Which plan, `planId` null for the one that is worked on, and as what. */
export interface PlanFileInput extends PlantInput {
  readonly planId: string | null;
  readonly format: TableFormat;
  readonly language: TableLanguage;
}

/** A plan's runs as a table to take away; the file's name says when the plan was made. */
export const exportPlan: UseCase<PlanFileInput, WrittenFile> = {
  role: "viewer",
  run: async ({ store, tableWriter }, { plantId, planId, format, language }) => {
    const known = await store.read(async (repositories) => ({
      stored: await repositories.plants.get(plantId),
      plan: await (planId === null
        ? workingPlanOf(repositories, plantId)
        : repositories.plans.get(plantId, planId)),
    }));
    if (known.stored === null) return refused(plantNotFound(plantId));
    if (known.plan === null) return refused(planNotFound(planId));
    const { plant } = known.stored;
    const { document, createdAt } = known.plan;
    const teamNames = new Map<string, string>(plant.setterTeams.map(({ id, name }) => [id, name]));
    const made = fileDate(document.plant.timeZone, createdAt, "minute");
    const stem = `${fileStem(plantId)}-plan-${made}`;
    return ok(await fileOf(tableWriter, planTable(document, teamNames, language), { stem, format }));
  },
};
