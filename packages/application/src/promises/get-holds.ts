import { plantNotFound } from "../not-found.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import type { DeskKeeper } from "./desk-keeper.ts";
import { expireHolds } from "./end-holds.ts";
import { type HeldCapacity, describeHold, holdContextOf } from "./held-capacity.ts";

/** Ended holds that are listed; older ones stay in the store. */
const MOST_ENDED = 50;

export interface ListedHolds {
  readonly revision: number;
  /** Those that take capacity, by when they run out; then those that ended last, newest first. */
  readonly holds: readonly HeldCapacity[];
}

/** Capacity that is held for customers, and what became of the last holds. */
export const getHolds = (desks: DeskKeeper): UseCase<PlantInput, ListedHolds> => ({
  role: "viewer",
  run: async (ports, { plantId }) => {
    await expireHolds(ports, desks.openAsIs, plantId);
    return ports.store.read(async (repositories) => {
      if ((await repositories.revisions.of(plantId)) === null) return refused(plantNotFound(plantId));
      const { revision, holds } = await repositories.holds.list(plantId);
      const ended = await repositories.holds.ended(plantId, MOST_ENDED);
      if (holds.length + ended.length === 0) return ok({ revision, holds: [] });
      const context = await holdContextOf(repositories, plantId);
      return ok({ revision, holds: [...holds, ...ended].map((hold) => describeHold(hold, context)) });
    });
  },
});
