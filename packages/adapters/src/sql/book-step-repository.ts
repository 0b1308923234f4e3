import type { BookStepRepository, DeskOfPlant } from "@formweek/application";
import { and, asc, desc, eq, getTableColumns, gte, inArray, lt } from "drizzle-orm";
import type { Database } from "./database.ts";
import { bookSteps } from "./schema.ts";

const mostKept = 100;
const { plantId: _, changeCount: __, ...columns } = getTableColumns(bookSteps);

/** What desks did to order books. */
export function bookStepRepository(database: Database): BookStepRepository {
  return {
    append: async (plantId, step) => {
      const [written] = await database
        .insert(bookSteps)
        .values({ plantId, ...step, changeCount: step.changes.length })
        .returning({ number: bookSteps.number });
      if (written === undefined) throw new Error(`a step of plant ${plantId} was not written`);
      const tooOld = database
        .select({ number: bookSteps.number })
        .from(bookSteps)
        .where(ofDesk({ plantId, ...step }))
        .orderBy(desc(bookSteps.number))
        .offset(mostKept);
      await database.delete(bookSteps).where(inArray(bookSteps.number, tooOld));
      return written.number;
    },
    newest: async (of, mostChanges) => {
      const sizes = await database
        .select({ number: bookSteps.number, changeCount: bookSteps.changeCount })
        .from(bookSteps)
        .where(ofDesk(of))
        .orderBy(desc(bookSteps.number));
      const from = oldestWithin(sizes, mostChanges);
      if (from === null) return [];
      return database
        .select(columns)
        .from(bookSteps)
        .where(and(ofDesk(of), gte(bookSteps.number, from)))
        .orderBy(asc(bookSteps.number));
    },
    forgetBefore: async (at) => {
      const forgotten = await database
        .delete(bookSteps)
        .where(lt(bookSteps.at, at))
        .returning({ number: bookSteps.number });
      return forgotten.length;
    },
  };
}

function ofDesk({ plantId, desk, by }: DeskOfPlant) {
  return and(eq(bookSteps.plantId, plantId), eq(bookSteps.desk, desk), eq(bookSteps.by, by));
}

interface SizeOfStep {
  readonly number: number;
  readonly changeCount: number;
}

/** Number of the oldest step that still fits, going back from the newest, which always does. */
function oldestWithin(newestFirst: readonly SizeOfStep[], mostChanges: number): number | null {
  let oldest: number | null = null;
  let changes = 0;
  for (const { number, changeCount } of newestFirst) {
    changes += changeCount;
    if (oldest !== null && changes > mostChanges) break;
    oldest = number;
  }
  return oldest;
}
