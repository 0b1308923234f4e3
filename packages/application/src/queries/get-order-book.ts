import type { Order } from "@formweek/capacity-model";
import { plantNotFound } from "../not-found.ts";
import { inputHash } from "../planning/input-hash.ts";
import { type PlanningSnapshot, planningSnapshot } from "../planning/planning-snapshot.ts";
import type {
  DocumentOrder,
  DocumentUnplanned,
  OrderState,
  PlanDocument,
} from "../planning/plan-document.ts";
import { isoInstant } from "../planning/iso-instant.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { workingPlanOf } from "./working-plan-of.ts";

/** An order with what the working plan says about it; nulls and "not planned yet" where the plan does not know it. */
export interface BookedOrder extends Order {
  readonly state: OrderState | "not planned yet";
  /** ISO 8601 UTC. */
  readonly finish: string | null;
  readonly slackSeconds: number | null;
  readonly fromStockPieces: number | null;
  readonly toMakePieces: number | null;
  readonly reasons: DocumentUnplanned["reasons"];
}

export interface BookedOrders {
  readonly revision: number;
  /** Whether plant, orders and pins are those that the working plan was made from; null without a plan. */
  readonly planInputs: "same" | "changed" | null;
  readonly orders: readonly BookedOrder[];
}

/** The order book with each order's state in the working plan. */
export const getOrderBook: UseCase<PlantInput, BookedOrders> = {
  role: "viewer",
  run: (ports, { plantId }) =>
    ports.store.read(async (repositories) => {
      const snapshot = await planningSnapshot(repositories, plantId);
      if (snapshot === null) return refused(plantNotFound(plantId));
      const plan = await workingPlanOf(repositories, plantId);
      return ok({
        revision: snapshot.bookRevision,
        planInputs: plan === null ? null : inputsSince(plan.document, snapshot),
        orders: withStates(
          snapshot.orders.filter(({ id }) => !snapshot.heldOrderIds.has(id)),
          plan?.document ?? null,
        ),
      });
    }),
};

function inputsSince({ inputHash: madeFrom }: PlanDocument, snapshot: PlanningSnapshot): "same" | "changed" {
  return inputHash(snapshot) === madeFrom ? "same" : "changed";
}

/** Joins orders and plan. An order that changed since the plan was made is not planned yet: its old finish would mislead. */
export function withStates(
  orders: readonly Order[],
  plan: Pick<PlanDocument, "orders" | "unplanned"> | null,
): readonly BookedOrder[] {
  const planned = new Map<string, DocumentOrder>((plan?.orders ?? []).map((entry) => [entry.orderId, entry]));
  const reasons = new Map<string, DocumentUnplanned["reasons"]>(
    (plan?.unplanned ?? []).map((entry) => [entry.orderId, entry.reasons]),
  );
  return orders.map((order) => {
    const entry = planned.get(order.id);
    if (entry === undefined || !isSameOrder(order, entry)) return { ...order, ...notPlannedYet };
    const { state, finish, slackSeconds, fromStockPieces, toMakePieces } = entry;
    return {
      ...order,
      state,
      finish,
      slackSeconds,
      fromStockPieces,
      toMakePieces,
      reasons: reasons.get(order.id) ?? [],
    };
  });
}

function isSameOrder(order: Order, entry: DocumentOrder): boolean {
  return (
    order.productId === entry.productId &&
    order.pieces === entry.pieces &&
    isoInstant(order.dueAt) === entry.due
  );
}

const notPlannedYet = {
  state: "not planned yet",
  finish: null,
  slackSeconds: null,
  fromStockPieces: null,
  toMakePieces: null,
  reasons: [],
} as const;
