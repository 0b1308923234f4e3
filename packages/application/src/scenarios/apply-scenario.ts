import { Order } from "@formweek/capacity-model";
import { applyHours } from "../planning/apply-hours.ts";
import type { PlanningSnapshot } from "../planning/planning-snapshot.ts";
import { withRate } from "./cycle-rates.ts";
import { withTeam } from "./extra-team.ts";
import type { ScenarioChange } from "./scenario-change.ts";

/** What plans are made from after the changes, each made on what those before it left. They have passed `scenarioFaults`. Pure. */
export function applyScenario(
  snapshot: PlanningSnapshot,
  changes: readonly ScenarioChange[],
): PlanningSnapshot {
  return changes.reduce(applyChange, snapshot);
}

/** The same for one change. */
export function applyChange(snapshot: PlanningSnapshot, change: ScenarioChange): PlanningSnapshot {
  const { plant, orders } = snapshot;
  switch (change.kind) {
    case "close line":
    case "add shift":
      return { ...snapshot, plant: applyHours(plant, change) };
    case "more copies": {
      const moulds = plant.moulds.map((mould) =>
        mould.id === change.mouldId ? { ...mould, copies: mould.copies + change.more } : mould,
      );
      return { ...snapshot, plant: { ...plant, moulds } };
    }
    case "another team":
      return { ...snapshot, plant: withTeam(plant, change) };
    case "cycle rate":
      return { ...snapshot, plant: withRate(plant, change) };
    case "cancel order": {
      // an order takes the stock that it was promised with along
      const stockShares = snapshot.stockShares.filter(({ orderId }) => orderId !== change.orderId);
      return { ...withBook(snapshot, bookWithout(snapshot, change.orderId)), stockShares };
    }
    case "rush order":
      return withBook(snapshot, [...bookWithout(snapshot, change.order.id), Order.parse(change.order)]);
    case "change order": {
      const order = orders.find(({ id }) => id === change.orderId);
      if (order === undefined) return snapshot;
      const changed = {
        ...order,
        pieces: change.pieces ?? order.pieces,
        dueAt: change.dueAt ?? order.dueAt,
      };
      return withBook(snapshot, [...bookWithout(snapshot, change.orderId), changed]);
    }
  }
}

/** Orders of the book but one. */
function bookWithout({ orders, heldOrderIds }: PlanningSnapshot, orderId: string): readonly Order[] {
  return orders.filter(({ id }) => !heldOrderIds.has(id) && id !== orderId);
}

/** The orders as they come from the store: those of the book by due instant, then number; then those that are held. */
function withBook(snapshot: PlanningSnapshot, book: readonly Order[]): PlanningSnapshot {
  const { orders, heldOrderIds } = snapshot;
  const sorted = [...book].sort((a, b) => a.dueAt - b.dueAt || (a.id < b.id ? -1 : 1));
  return { ...snapshot, orders: [...sorted, ...orders.filter(({ id }) => heldOrderIds.has(id))] };
}
