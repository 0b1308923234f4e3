import { grossPiecesFor, ordersToMake, packingChainOf, piecesPerUnit } from "@formweek/capacity-model";
import type { Order, OrderToMake, Plant, Product } from "@formweek/capacity-model";
import type { Job, Pin } from "@formweek/scheduler";
import type { StockShare } from "../ports/hold-repository.ts";
import type { Assembled, OrderDemand } from "./assembled.ts";
import { inputHash } from "./input-hash.ts";
import { framePlant, type PlantFrame } from "./plant-frame.ts";

/** What planning starts from besides the plant. The orders have passed `orderFaults`. */
export interface OrdersInput {
  /** Those of the book, then those that are held. */
  readonly orders: readonly Order[];
  /** One an order at the most. A pin of an order with nothing left to make holds nothing and is left out of the problem. */
  readonly pins: readonly Pin[];
  /** Stock that orders were promised with; absent: none was. */
  readonly stockShares?: readonly StockShare[];
}

/** What planning starts from. The plant has passed `plantFaults`. */
export interface PlanningInput extends OrdersInput {
  readonly plant: Plant;
  /** Seconds since the epoch; matters only where the plant fixes no planning start. */
  readonly now: number;
}

/** Turns a plant and its orders into the scheduler's problem: calendars, rates, fit, changes and quantities worked out. Pure. */
export function assembleProblem({ plant, now, ...input }: PlanningInput): Assembled {
  const demands = demandsOf(plant, input);
  const products = new Map<string, Product>(plant.products.map((product) => [product.id, product]));
  const made = demands.flatMap(({ order, grossPieces }) =>
    grossPieces === 0 ? [] : (products.get(order.productId) ?? []),
  );
  return assembled(framePlant(plant, now, made), input, demands);
}

/** The same within a plant's frame that has the products of all the orders. Pure. */
export function assembleOrders(frame: PlantFrame, input: OrdersInput): Assembled {
  return assembled(frame, input, demandsOf(frame.plant, input));
}

function assembled(frame: PlantFrame, input: OrdersInput, demands: readonly OrderDemand[]): Assembled {
  const { plant, closures, extraShifts, states } = frame;
  const { orders, pins, stockShares = [] } = input;
  const idle = new Set<string>(
    demands.filter(({ grossPieces }) => grossPieces === 0).map(({ order }) => order.id),
  );
  return {
    plant,
    pins,
    stockShares,
    problem: {
      ...frame.problem,
      jobs: demands.flatMap((demand) => jobOf(frame, demand) ?? []),
      pins: pins.filter(({ orderId }) => !idle.has(orderId)),
    },
    demands,
    closures,
    extraShifts,
    states,
    inputHash: inputHash({ plant, orders, pins, stockShares }),
  };
}

/** Orders of unknown products come to nothing to make; `orderFaults` has named them before. */
function demandsOf({ products }: Plant, { orders, stockShares = [] }: OrdersInput): readonly OrderDemand[] {
  const shares = new Map(stockShares.map(({ orderId, pieces }) => [orderId, pieces]));
  const netted = new Map<string, OrderToMake>(
    ordersToMake(orders, products, shares).map((made) => [made.orderId, made]),
  );
  return orders.map((order) => demandOf(order, netted.get(order.id)));
}

/** An order with what is left of it to make. */
export function demandOf(order: Order, made: OrderToMake | undefined): OrderDemand {
  return {
    order,
    fromStockPieces: made?.fromStockPieces ?? 0,
    toMakePieces: made?.goodPiecesToMake ?? 0,
    grossPieces: made?.grossPieces ?? 0,
    trail: made?.trail ?? [],
  };
}

/** An order for the scheduler; null where nothing of it is to be made. */
export function jobOf(
  { plant, window, options }: PlantFrame,
  { order, toMakePieces, grossPieces }: OrderDemand,
): Job | null {
  const product = plant.products.find(({ id }) => id === order.productId);
  const made = options.get(order.productId);
  if (product === undefined || made === undefined || grossPieces === 0) return null;
  return {
    orderId: order.id,
    productId: product.id,
    pieces: grossPieces,
    dueAt: order.dueAt,
    earliestStartAt: Math.max(window.start, order.earliestStartAt ?? window.start),
    weight: order.weight,
    holdingWeight: packingChainOf(toMakePieces, product).pallets,
    conditioningSeconds: Math.round(product.conditioningHours * 3600),
    sheetId: product.sheetId,
    ...splitOf(order, product, grossPieces),
    ...made,
  };
}

/** Lots of one order at the most: each has a start of its own. */
const MOST_LOTS = 3;

/**
 * Lots are each a least run and a carton at the least, packed in whole rounding units but for one lot; all in pieces to form,
 * each unit with its share of the scrap allowance. An order that may be delivered in parts may be made in lots.
 */
function splitOf(order: Order, product: Product, grossPieces: number): Pick<Job, "lots" | "lotSize"> {
  const toForm = (good: number): number => grossPiecesFor(good, product.runScrapShare);
  const leastPieces = toForm(Math.max(product.leastRunPieces, piecesPerUnit(product, "carton")));
  const unitPieces = toForm(piecesPerUnit(product, product.roundingUnit));
  const lotSize = { leastPieces, unitPieces };
  if (!order.partsAllowed || 2 * leastPieces > grossPieces) return { lotSize };
  return { lots: { most: MOST_LOTS, ...lotSize } };
}
