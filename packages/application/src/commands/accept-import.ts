import type { Order, Plant } from "@formweek/capacity-model";
import type { Actor } from "../actor.ts";
import { authorise } from "../authorise.ts";
import { appError } from "../errors.ts";
import { sameRecord } from "../import/same-record.ts";
import { importNotFound } from "../not-found.ts";
import type {
  AppliedCounts,
  ImportAcceptance,
  ImportChange,
  StoredImport,
} from "../ports/import-repository.ts";
import type { OrderBookChange } from "../ports/order-repository.ts";
import type { Ports } from "../ports/ports.ts";
import type { Repositories } from "../ports/unit-of-work.ts";
import { publishPending } from "../publish-pending.ts";
import { type Result, ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import type { OrderChange } from "./order-changes.ts";
import { importOutdated, writeOrders } from "./put-orders.ts";
import { writePlant } from "./put-plant.ts";

export interface AcceptImportInput extends PlantInput {
  readonly importId: string;
  /** Revision that the dry run named. */
  readonly revision: number;
  /** Desk at which the orders can be taken back again; null: nowhere. */
  readonly desk: string | null;
}

export interface AcceptedImport {
  readonly applied: AppliedCounts;
  /** Revision after the write. */
  readonly revision: number;
  /** Number of the step of the order book that was kept; null: none was. */
  readonly step: number | null;
}

/**
 * Takes over what a dry run showed, whole or not at all. Accepting again answers the same and writes nothing. Refused
 * when orders or plant changed since the dry run.
 */
export const acceptImport: UseCase<AcceptImportInput, AcceptedImport> = {
  role: "planner",
  run: async (ports, input, actor) => {
    const accepted = await ports.store.write(async (repositories) => {
      const stored = await repositories.imports.getForUpdate(input.plantId, input.importId);
      if (stored === null) return refused(importNotFound(input.importId));
      if (stored.accepted !== null) return ok(answerOf(stored.accepted));
      if (stored.change === null) return refused(nothingToAccept);
      if (stored.baseRevision !== input.revision) return refused(importOutdated);
      return takeOver(ports, repositories, { stored, change: stored.change, actor, desk: input.desk });
    });
    if (accepted.ok) await publishPending(ports);
    return accepted;
  },
};

interface TakeOver {
  readonly stored: StoredImport;
  readonly change: ImportChange;
  readonly actor: Actor;
  readonly desk: string | null;
}

async function takeOver(
  ports: Ports,
  repositories: Repositories,
  { stored, change, actor, desk }: TakeOver,
): Promise<Result<AcceptedImport>> {
  const { plantId, baseRevision: expectedRevision } = stored;
  if (change.kind === "plant") {
    const allowed = authorise(actor, plantId, "manager");
    if (!allowed.ok) return allowed;
  }
  const made = change.kind === "orders" ? await changesOf(repositories, plantId, change.change) : [];
  const written =
    change.kind === "orders"
      ? await writeOrders(ports, repositories, { plantId, change: change.change, expectedRevision })
      : await writeChangedPlant(ports, repositories, { stored, plant: change.plant });
  if (!written.ok) return written;
  const { revision } = written.value;
  const at = ports.clock.now();
  const isKept = desk !== null && made.length > 0 && made.length <= MOST_TAKEN_BACK;
  const kept = isKept ? ({ kind: "change", of: null, changes: made, desk, by: actor.id, at } as const) : null;
  const step = kept && (await repositories.bookSteps.append(plantId, kept));
  const acceptance = { at, by: actor.id, revision, applied: stored.counts, step };
  return (await repositories.imports.accept(stored.id, acceptance))
    ? ok(answerOf(acceptance))
    : refused(takenMeanwhile);
}

function answerOf({ applied, revision, step = null }: ImportAcceptance): AcceptedImport {
  return { applied, revision, step };
}

/** As many changes as one request may hold: more could not be taken back at once. */
const MOST_TAKEN_BACK = 20_000;

/** What the import does to each order that it changes. */
async function changesOf(
  { orders }: Repositories,
  plantId: string,
  { put, removeIds }: OrderBookChange,
): Promise<readonly OrderChange[]> {
  const book = new Map<string, Order>((await orders.book(plantId)).orders.map((order) => [order.id, order]));
  const before = (id: string): Order | null => book.get(id) ?? null;
  return [
    ...put.map((after) => ({ before: before(after.id), after })),
    ...removeIds.map((id) => ({ before: before(id), after: null })),
  ].filter((change) => !sameRecord(change.before, change.after));
}

interface ChangedPlant {
  readonly stored: StoredImport;
  readonly plant: Plant;
}

/** A plant that came out as it was keeps its revision: loading the same file twice changes nothing. */
async function writeChangedPlant(
  ports: Ports,
  repositories: Repositories,
  { stored, plant }: ChangedPlant,
): Promise<Result<{ readonly revision: number }>> {
  const { baseRevision, counts } = stored;
  const current = await repositories.plants.get(stored.plantId);
  if (counts.added + counts.changed === 0 && current?.revision === baseRevision)
    return ok({ revision: baseRevision });
  return writePlant(ports, repositories, plant, baseRevision === 0 ? null : baseRevision);
}

const nothingToAccept = appError("import-not-acceptable", {
  title: "There is nothing to take over.",
  cause: "No row of the file was usable.",
  remedy: "Correct the rows that the check named, and check the file again.",
});

const takenMeanwhile = appError("conflicting-write", {
  title: "The import was taken over by someone else at the same moment.",
  cause: "Two people accepted it at once.",
  remedy: "Look at the order book: the change is there.",
});
