import { appError } from "../errors.ts";
import { plantNotFound } from "../not-found.ts";
import type { Concern } from "../ports/run-repository.ts";
import type { Repositories } from "../ports/unit-of-work.ts";
import { type Result, ok, refused } from "../result.ts";
import type { UseCase } from "../use-case.ts";
import { type RunWish, runParams, startRun } from "./start-run.ts";

export interface SolveWish extends RunWish {
  /** What counts for more than its price; null: prices as they are. */
  readonly favour: Concern | null;
}

/** Budget when none is asked for, seconds. */
const DEFAULT_SECONDS = 10;

/** Asks for a plan of the order book as it stands when the run starts. One run a plant at a time. */
export const requestSolve: UseCase<SolveWish, { readonly runId: string }> = {
  role: "planner",
  run: (ports, wish, actor) => {
    const { plantId, favour } = wish;
    const run = { plantId, params: runParams(wish, DEFAULT_SECONDS), requestedBy: actor.id };
    return startRun(ports, run, async (repositories) => {
      const orders = await somethingToPlan(repositories, plantId);
      return orders.ok ? ok({ kind: "plan", favour }) : orders;
    });
  },
};

/** The plant is there and its book has orders. */
export async function somethingToPlan(
  { plants, orders, holds }: Pick<Repositories, "plants" | "orders" | "holds">,
  plantId: string,
): Promise<Result<null>> {
  if ((await plants.get(plantId)) === null) return refused(plantNotFound(plantId));
  const isEmpty = (await orders.book(plantId)).orders.length + (await holds.list(plantId)).holds.length === 0;
  return isEmpty ? refused(emptyBook) : ok(null);
}

const emptyBook = appError("nothing-to-plan", {
  title: "There is nothing to plan.",
  cause: "The order book of this plant is empty.",
  remedy: "Import orders first.",
});
