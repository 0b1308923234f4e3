import { orderLoads, type Order, type OrderLoad, type ResourceKind } from "@formweek/capacity-model";
import { appError } from "../errors.ts";
import { currentLoad } from "../load/current-load.ts";
import { instantOfIso } from "../planning/iso-instant.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** Which resource, and which stretch of time; ISO 8601 UTC. */
export interface LoadOrdersInput extends PlantInput {
  readonly kind: ResourceKind;
  readonly id: string;
  readonly start: string;
  readonly end: string;
}

/** An order behind a load; what the book does not hold any more is null. */
export interface LoadingOrder extends OrderLoad {
  readonly order: Order | null;
}

export interface LoadOrders {
  /** The greatest first, at most 200. */
  readonly orders: readonly LoadingOrder[];
  readonly total: number;
}

const LONGEST_LIST = 200;

/** The orders that load a resource in a stretch of time. */
export const getLoadOrders: UseCase<LoadOrdersInput, LoadOrders> = {
  role: "viewer",
  run: async (ports, { plantId, kind, id, start, end }) => {
    const current = await currentLoad(ports, plantId);
    if (!current.ok) return current;
    const { load } = current.value;
    const resource = load.resources(kind).find(({ hours }) => hours.id === id);
    const [from, to] = [instantOfIso(start), instantOfIso(end)];
    if (resource === undefined) return refused(resourceNotFound(kind, id));
    if (from === null || to === null || from >= to) return refused(emptySpan(start, end));
    const { window } = load;
    const inWindow = { start: Math.max(from, window.start), end: Math.min(to, window.end) };
    const found = orderLoads(resource, inWindow);
    const booked = new Map<string, Order>(load.orders.map((order) => [order.id, order]));
    const orders = found
      .slice(0, LONGEST_LIST)
      .map((each) => ({ ...each, order: booked.get(each.orderId) ?? null }));
    return ok({ orders, total: found.length });
  },
};

const resourceNotFound = (kind: ResourceKind, id: string) =>
  appError("not-found", {
    title: `There is no such ${WORDS[kind]}.`,
    cause: `The plant has no ${WORDS[kind]} "${id}".`,
    remedy: "Choose one of the plant's records.",
  });

const WORDS: Readonly<Record<ResourceKind, string>> = {
  line: "line",
  mould: "mould",
  team: "setter team",
  pool: "operator pool",
};

const emptySpan = (start: string, end: string) =>
  appError(
    "invalid-input",
    {
      title: "This is no stretch of time.",
      cause: `It ends at ${end}, which is not after its start ${start}.`,
      remedy: "Name an end after the start.",
    },
    [{ path: "end", problem: `${end} is not after ${start}.`, remedy: "Name a later instant." }],
  );
