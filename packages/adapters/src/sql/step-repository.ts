import type { ListedStep, HandEdit, PlanStep, StepRepository } from "@formweek/application";
import { type SQL, and, desc, eq, getTableColumns, gt, lt } from "drizzle-orm";
import { alias } from "drizzle-orm/pg-core";
import type { Database } from "./database.ts";
import { planSteps, plans } from "./schema.ts";

const { plantId: ofPlant, ...columns } = getTableColumns(planSteps);

/** Steps of each plant's working plan, only ever added to. */
export function stepRepository(database: Database): StepRepository {
  const newest: StepRepository["newest"] = async (plantId) => {
    const [row] = await database
      .select(columns)
      .from(planSteps)
      .where(eq(ofPlant, plantId))
      .orderBy(desc(planSteps.revision))
      .limit(1);
    return row ?? null;
  };
  return {
    newest,
    newestOf: async (plantId, kind) => {
      const [row] = await database
        .select(columns)
        .from(planSteps)
        .where(and(eq(ofPlant, plantId), eq(planSteps.kind, kind)))
        .orderBy(desc(planSteps.revision))
        .limit(1);
      return row ?? null;
    },
    get: async (plantId, revision) => {
      const [row] = await database
        .select(columns)
        .from(planSteps)
        .where(and(eq(ofPlant, plantId), eq(planSteps.revision, revision)));
      return row ?? null;
    },
    after: (plantId, revision, limit) =>
      listed(database, plantId, { where: gt(planSteps.revision, revision), limit }),
    before: (plantId, revision, limit) =>
      listed(database, plantId, { where: lt(planSteps.revision, revision), limit }),
    published: (plantId, limit) =>
      database
        .select(columns)
        .from(planSteps)
        .where(and(eq(ofPlant, plantId), eq(planSteps.kind, "publish")))
        .orderBy(desc(planSteps.revision))
        .limit(limit),
    append: async (plantId, step) => {
      if (((await newest(plantId))?.revision ?? 0) !== step.revision - 1) return false;
      const written = await database
        .insert(planSteps)
        .values({ plantId, ...step })
        .onConflictDoNothing()
        .returning({ revision: planSteps.revision });
      return written.length === 1;
    },
  };
}

/** With the change by hand that leads from one of the step's plans to the other. */
async function listed(
  database: Database,
  plantId: string,
  { where, limit }: { readonly where: SQL; readonly limit: number },
): Promise<readonly ListedStep[]> {
  const from = alias(plans, "from_plan");
  const to = alias(plans, "to_plan");
  const rows = await database
    .select({ ...columns, forth: to.edit, forthFrom: to.parentId, back: from.edit, backTo: from.parentId })
    .from(planSteps)
    .innerJoin(to, eq(to.id, planSteps.planId))
    .leftJoin(from, eq(from.id, planSteps.fromPlanId))
    .where(and(eq(ofPlant, plantId), where))
    .orderBy(desc(planSteps.revision))
    .limit(limit);
  return rows.map(({ forth, forthFrom, back, backTo, ...step }) => ({
    ...step,
    edit: editBetween(step, { forth, forthFrom, back, backTo }),
  }));
}

interface EditsOfPlans {
  readonly forth: HandEdit | null;
  readonly forthFrom: string | null;
  readonly back: HandEdit | null;
  readonly backTo: string | null;
}

function editBetween(step: PlanStep, { forth, forthFrom, back, backTo }: EditsOfPlans): HandEdit | null {
  if (step.fromPlanId === null) return null;
  if (forthFrom === step.fromPlanId) return forth;
  return backTo === step.planId ? back : null;
}
