import type { HoldEnding, StoredHold } from "../ports/hold-repository.ts";
import type { Ports } from "../ports/ports.ts";
import { type Result, ok, refused } from "../result.ts";
import type { KeptDesk } from "./kept-desk.ts";
import { documentUnder, withoutHeld } from "./hold-plan.ts";
import { RACED, addHoldStep, areStill, untilFirst } from "./write-holds.ts";

/** Opens the desk as it is, holds that have run out included. */
export type OpenAsIs = (ports: Ports, plantId: string) => Promise<Result<KeptDesk>>;

/** Which holds end, and how. */
export interface Ended {
  readonly plantId: string;
  readonly holds: readonly StoredHold[];
  readonly ending: HoldEnding & { readonly state: "released" | "expired" };
}

/**
 * Ends holds, and takes their runs out of the working plan by a step of its own, all in one transaction. A plan that cannot be
 * timed any more keeps its runs until it is planned anew: the capacity is given back all the same.
 */
export async function endHolds(ports: Ports, openAsIs: OpenAsIs, ended: Ended): Promise<Result<number>> {
  const { plantId, holds, ending } = ended;
  const ids = new Set(holds.map(({ id }) => id));
  const orderIds = holds.map(({ order }) => order.id);
  return untilFirst(ports, async () => {
    const opened = await openAsIs(ports, plantId);
    const kept = opened.ok ? opened.value : null;
    const document = kept === null ? null : documentWithout(kept, new Set(orderIds), ports.clock.now());
    return ports.store.write(async (repositories) => {
      if (kept !== null && !(await areStill(repositories, plantId, kept.revisions))) return refused(RACED);
      const list = await repositories.holds.list(plantId);
      const open = list.holds.filter(({ id }) => ids.has(id));
      if (open.length === 0) return ok(list.revision);
      if (open.length < ids.size) return refused(RACED);
      const spent = { holdIds: open.map(({ id }) => id), ending };
      const revision = await repositories.holds.end(plantId, spent, list.revision);
      if (revision === null) return refused(RACED);
      if (kept !== null && document !== null) {
        const change = { kind: "end holds", orderIds, state: ending.state } as const;
        const by = ending.by ?? holds[0]?.heldBy ?? "";
        const { planId: parentId } = kept.standing;
        await addHoldStep(ports, repositories, { plantId, parentId, change, document, by });
      }
      for (const { id: holdId } of open)
        await repositories.events.append(plantId, ending.at, {
          type: "holds-changed",
          revision,
          holdId,
          state: ending.state,
        });
      return ok(revision);
    });
  });
}

function documentWithout({ standing }: KeptDesk, orderIds: ReadonlySet<string>, now: number) {
  const made = documentUnder(standing, { records: withoutHeld(standing.records, orderIds) }, now);
  return made.ok ? made.value : null;
}

/** Ends the holds of a plant that have run out. */
export async function expireHolds(ports: Ports, openAsIs: OpenAsIs, plantId: string): Promise<void> {
  const at = ports.clock.now();
  const { holds } = await ports.store.read((repositories) => repositories.holds.list(plantId));
  const over = holds.filter(({ until }) => until <= at);
  if (over.length === 0) return;
  const ending = { state: "expired", by: null, at, orderNumber: null } as const;
  const ended = await endHolds(ports, openAsIs, { plantId, holds: over, ending });
  if (!ended.ok)
    ports.log.warn("Holds that ran out could not be ended yet", { plantId, reason: ended.error.title });
}

/** Ends the holds of every plant that have run out. */
export async function expireAllHolds(ports: Ports, openAsIs: OpenAsIs): Promise<void> {
  const at = ports.clock.now();
  const plantIds = await ports.store.read(({ holds }) => holds.plantsWithExpired(at));
  for (const plantId of plantIds) await expireHolds(ports, openAsIs, plantId);
}
