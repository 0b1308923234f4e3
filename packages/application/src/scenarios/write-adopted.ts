import type { Order, Plant } from "@formweek/capacity-model";
import { heldRefusal } from "../commands/change-orders.ts";
import { checkedChanges } from "../commands/order-changes.ts";
import { conflictsWith } from "../commands/order-conflicts.ts";
import { writeOrders } from "../commands/put-orders.ts";
import { writePlant } from "../commands/put-plant.ts";
import { refusalOfOrders, refusalOfPlant } from "../commands/record-faults.ts";
import { type AppError, appError } from "../errors.ts";
import { plantNotFound } from "../not-found.ts";
import type { Ports } from "../ports/ports.ts";
import type { Adopted } from "../ports/scenario-repository.ts";
import type { Repositories } from "../ports/unit-of-work.ts";
import { type Result, ok, refused } from "../result.ts";
import { type AdoptedRecords, type ChangedList, withListChanges } from "./record-changes.ts";

interface ToWrite {
  readonly plantId: string;
  readonly records: AdoptedRecords;
  /** How the scenario stands after it; null: its changes were taken back. */
  readonly adopted: Adopted | null;
}

/**
 * Writes what adopting a scenario changes in plant and book, or takes back, in the caller's transaction. Refused, with what is
 * another by now, unless all that it changes stands as it was left.
 */
export async function writeAdopted(
  ports: Pick<Ports, "clock">,
  repositories: Repositories,
  { plantId, records, adopted }: ToWrite,
): Promise<Result<null>> {
  const stored = await repositories.plants.get(plantId);
  if (stored === null) return refused(plantNotFound(plantId));
  const changed = withListChanges(stored.plant, records.plant);
  if (!changed.ok) return refused(recordsChanged(changed.error));
  const plant = changed.value;
  if (records.plant.length > 0) {
    const refusal = refusalOfPlant(plant);
    if (refusal !== null) return refused(refusal);
    const written = await writePlant(ports, repositories, plant, stored.revision);
    if (!written.ok) return written;
  }
  const booked = await writeBook(ports, repositories, { plant, records });
  if (!booked.ok) return booked;
  const { scenarioId: id, scenarioRevision: revision } = records;
  await repositories.scenarios.markAdopted(plantId, { id, revision }, adopted);
  await repositories.events.append(plantId, ports.clock.now(), { type: "scenarios-changed" });
  return ok(null);
}

async function writeBook(
  ports: Pick<Ports, "clock">,
  repositories: Repositories,
  { plant, records: { orders } }: { readonly plant: Plant; readonly records: AdoptedRecords },
): Promise<Result<null>> {
  if (orders.length === 0) return ok(null);
  const plantId = plant.id;
  const checked = checkedChanges(orders);
  if (!checked.ok) return checked;
  const change = checked.value;
  const { pins } = await repositories.pins.list(plantId);
  const refusal = refusalOfOrders(change.put, plant) ?? heldRefusal(change.removeIds, { pins });
  if (refusal !== null) return refused(refusal);
  const { revision: expectedRevision, orders: booked } = await repositories.orders.book(plantId);
  const book = new Map<string, Order>(booked.map((order) => [order.id, order]));
  const conflict = conflictsWith(book, orders, plant.timeZone);
  if (conflict !== null) return refused(conflict);
  const written = await writeOrders(ports, repositories, { plantId, change, expectedRevision });
  return written.ok ? ok(null) : written;
}

const WORDS: Readonly<Record<ChangedList, string>> = {
  calendars: "Its calendars",
  lineClosures: "The closures of its lines",
  addedShifts: "Its added shifts",
  moulds: "Its moulds",
  provenRates: "Its proven rates",
  setterTeams: "Its setter teams",
};

const recordsChanged = (list: ChangedList): AppError =>
  appError("plant-changed", {
    title: "The plant's data changed in the meantime.",
    cause: `${WORDS[list]} have changed since the scenario was adopted: taking it back would take that away too.`,
    remedy: "Change the plant by hand from where it stands, or take back that other change first.",
  });
