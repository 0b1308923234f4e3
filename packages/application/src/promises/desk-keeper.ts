import type { Plant } from "@formweek/capacity-model";
import { planNotFound, plantNotFound } from "../not-found.ts";
import { frozenPlanOf } from "../planning/frozen-plan.ts";
import { plannedRecords } from "../planning/planning-snapshot.ts";
import type { Ports } from "../ports/ports.ts";
import type { PlantRevisions } from "../ports/revision-repository.ts";
import { type Result, ok, refused } from "../result.ts";
import { expireHolds } from "./end-holds.ts";
import type { KeptDesk } from "./kept-desk.ts";
import { offersFrom } from "./offers-from.ts";
import { notPlannedYet } from "./promise-refusals.ts";
import { type DeskFrame, type StandingDesk, frameFor, openDesk } from "./standing-desk.ts";

/** Desks kept open at the most, one a plant. */
const MOST_DESKS = 4;
/** Holds may run out while a desk is being opened, but not again and again. */
const MOST_TRIES = 3;

interface Kept extends KeptDesk {
  readonly frameKey: string;
  readonly deskFrame: DeskFrame;
}

/**
 * Keeps the desks of a process open. Opening one takes far longer than answering, so it is done once for the versions of the
 * records that it stands on; every call asks the store whether they still are the newest. The desk asked longest ago is closed first.
 */
export class DeskKeeper {
  readonly #kept = new Map<string, Kept>();

  /** The desk of a plant as its records are now. */
  async open(ports: Ports, plantId: string): Promise<Result<KeptDesk>> {
    for (let tries = 1; ; tries++) {
      const now = ports.clock.now();
      const opened = await this.openAsIs(ports, plantId);
      if (!opened.ok) return opened;
      const { nextExpiry } = opened.value.revisions;
      if (nextExpiry === null || nextExpiry > now || tries === MOST_TRIES) return opened;
      await expireHolds(ports, this.openAsIs, plantId);
    }
  }

  /** The same with the holds that have run out and still stand in the plan. */
  readonly openAsIs = async (ports: Ports, plantId: string): Promise<Result<KeptDesk>> => {
    const now = ports.clock.now();
    const known = this.#kept.get(plantId);
    const read = await ports.store.read(async (repositories) => {
      const revisions = await repositories.revisions.of(plantId);
      if (revisions === null) return refused(plantNotFound(plantId));
      if (revisions.step === 0) return refused(notPlannedYet);
      if (known !== undefined && isSame(known, revisions, now)) return ok({ kept: known });
      const step = await repositories.steps.newest(plantId);
      const plan = step === null ? null : await repositories.plans.get(plantId, step.planId);
      if (step === null || plan === null) return refused(planNotFound(step?.planId ?? null));
      const isPlantKnown = known !== undefined && known.revisions.plant === revisions.plant;
      const plant = isPlantKnown
        ? known.deskFrame.frame.plant
        : (await repositories.plants.get(plantId))?.plant;
      if (plant === undefined) return refused(plantNotFound(plantId));
      const records = await plannedRecords(repositories, plantId);
      const frozen = await frozenPlanOf(repositories, plantId);
      return ok({ kept: null, revisions, step, document: plan.document, plant, records, frozen });
    });
    if (!read.ok) return read;
    if (read.value.kept !== null) return ok(this.#used(plantId, read.value.kept));
    const { revisions, step, document, plant, records, frozen } = read.value;
    // another call may have opened it while this one was reading
    const other = this.#kept.get(plantId);
    if (other !== undefined && isSame(other, revisions, now)) return ok(this.#used(plantId, other));
    const frameKey = `${revisions.plant} ${document.horizon.start}`;
    const framed = this.#frameOf(plantId, frameKey, { plant, document });
    if (!framed.ok) return framed;
    const from = { planId: step.planId, revision: step.revision, document, records, frozen, ...framed.value };
    const standing = openDesk(from, now);
    if (!standing.ok) return standing;
    const kept = { revisions, standing: standing.value, frameKey, deskFrame: framed.value };
    return ok(this.#used(plantId, kept));
  };

  #frameOf(
    plantId: string,
    frameKey: string,
    { plant, document }: { readonly plant: Plant; readonly document: StandingDesk["document"] },
  ): Result<DeskFrame> {
    const kept = this.#kept.get(plantId);
    return kept?.frameKey === frameKey ? ok(kept.deskFrame) : frameFor(plant, document);
  }

  #used(plantId: string, kept: Kept): Kept {
    this.#kept.delete(plantId);
    this.#kept.set(plantId, kept);
    const [oldest] = this.#kept.keys();
    if (this.#kept.size > MOST_DESKS && oldest !== undefined) this.#kept.delete(oldest);
    return kept;
  }
}

/** The records are the same, and no run has begun since that offers could still move. */
function isSame({ revisions, standing }: Kept, newest: PlantRevisions, now: number): boolean {
  const { plant, book, pins, holds, step } = revisions;
  return (
    plant === newest.plant &&
    book === newest.book &&
    pins === newest.pins &&
    holds === newest.holds &&
    step === newest.step &&
    offersFrom(standing.frame, now) <= standing.nextStart
  );
}
