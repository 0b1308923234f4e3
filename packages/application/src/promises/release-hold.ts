import { rankOf, roleIn, type Actor } from "../actor.ts";
import { appError } from "../errors.ts";
import type { StoredHold } from "../ports/hold-repository.ts";
import type { Ports } from "../ports/ports.ts";
import { type Result, ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import type { DeskKeeper } from "./desk-keeper.ts";
import { endHolds } from "./end-holds.ts";
import { describeHold, holdContextOf } from "./held-capacity.ts";
import type { HoldWritten } from "./hold-capacity.ts";
import type { PromiseQueue } from "./promise-queue.ts";
import { holdEnded } from "./promise-refusals.ts";

export interface ReleaseInput extends PlantInput {
  readonly holdId: string;
}

/** Gives held capacity back; its run leaves the working plan. A hold that was released already stays so, which is no fault. */
export const releaseHold = (desks: DeskKeeper, queue: PromiseQueue): UseCase<ReleaseInput, HoldWritten> => ({
  role: "sales",
  run: (ports, { plantId, holdId }, actor) =>
    queue.run(plantId, async () => {
      const found = await ownHold(ports, { plantId, holdId }, actor);
      if (!found.ok) return found;
      const hold = found.value;
      const state = hold.ending?.state ?? "held";
      if (state !== "held" && state !== "released") return refused(holdEnded(hold.order.id, state));
      if (state === "held") {
        const ending = { state: "released", by: actor.id, at: ports.clock.now(), orderNumber: null } as const;
        const ended = await endHolds(ports, desks.openAsIs, { plantId, holds: [hold], ending });
        if (!ended.ok) return ended;
      }
      return holdAsItIs(ports, plantId, holdId);
    }),
});

/** A hold of the plant that the actor made, or may change as a planner. */
export async function ownHold(
  { store }: Pick<Ports, "store">,
  { plantId, holdId }: ReleaseInput,
  actor: Actor,
): Promise<Result<StoredHold>> {
  const hold = await store.read(({ holds }) => holds.get(plantId, holdId));
  if (hold === null) return refused(holdNotFound(holdId));
  const role = roleIn(actor, plantId);
  const mayChange = hold.heldBy === actor.id || (role !== null && rankOf(role) >= rankOf("planner"));
  return mayChange ? ok(hold) : refused(othersHold(hold));
}

/** What a hold is after a change, with the revision of the list. */
export function holdAsItIs(
  { store }: Pick<Ports, "store">,
  plantId: string,
  holdId: string,
): Promise<Result<HoldWritten>> {
  return store.read(async (repositories) => {
    const hold = await repositories.holds.get(plantId, holdId);
    if (hold === null) return refused(holdNotFound(holdId));
    const { revision } = await repositories.holds.list(plantId);
    return ok({ revision, hold: describeHold(hold, await holdContextOf(repositories, plantId)) });
  });
}

const holdNotFound = (holdId: string) =>
  appError("not-found", {
    title: "There is no such hold.",
    cause: `No hold "${holdId}" is known in this plant.`,
    remedy: "Choose one of the list of holds.",
  });

const othersHold = ({ order, heldBy }: StoredHold) =>
  appError("forbidden", {
    title: "This hold is somebody else's.",
    cause: `${order.id} was held by ${heldBy}.`,
    remedy: `Ask ${heldBy}, or a planner, to change it.`,
  });
