import type { Order } from "../plant/order.ts";
import type { Product } from "../plant/product.ts";
import type { OrderId, ProductId } from "../plant/scalars.ts";
import { grossPiecesFor, piecesPerUnit, roundUpToUnit } from "./packing-chain.ts";

/** What is left to make of one order. All pieces are whole and >= 0. */
export interface OrderToMake {
  readonly orderId: OrderId;
  readonly productId: ProductId;
  readonly orderedPieces: number;
  readonly fromStockPieces: number;
  /** Added to this order to bring the stock back to its safety level. */
  readonly toSafetyStockPieces: number;
  /** Good pieces to make, least run and rounding included; 0: covered by stock. */
  readonly goodPiecesToMake: number;
  /** Pieces to form, scrap allowance included. */
  readonly grossPieces: number;
  /** Good pieces beyond what the order and the safety stock need; they go to stock. */
  readonly surplusPieces: number;
  /** True where the whole lot stays within the order's over-delivery tolerance. */
  readonly withinOverTolerance: boolean;
  /** How the quantity came about, step by step, in words. */
  readonly trail: readonly string[];
}

/**
 * Nets stock against the orders of each product in due order (firm before forecast, then by number) and rounds what is
 * left: at least the least run, up to whole rounding units, then the scrap allowance. The safety stock is never given away;
 * where the stock has already sunk below it, the product's last order makes the missing pieces too, so that no customer waits
 * for the shelf. Surplus of one lot is not counted on for a later order: nothing says that it will be made before.
 * An order that was promised to a customer has a share of the stock of its own, which may be none: it takes that before all
 * others and no more, and never fills the safety stock, so that what was promised comes to the same pieces for good.
 * One result per order, in the orders' own sequence; orders of products that are not given are left out (`orderFaults` names them).
 */
export function ordersToMake(
  orders: readonly Order[],
  products: readonly Product[],
  shares: StockShares = NO_SHARES,
): readonly OrderToMake[] {
  const productsById = new Map(products.map((product) => [product.id, product]));
  const lastOfProduct = new Map<ProductId, OrderId>();
  const dueOrder = [...orders].sort(byDue);
  const promised = dueOrder.filter(({ id }) => shares.has(id));
  const others = dueOrder.filter(({ id }) => !shares.has(id));
  for (const order of others) lastOfProduct.set(order.productId, order.id);
  const free = new Map(
    products.map((product) => [product.id, Math.max(0, product.stockPieces - product.safetyStockPieces)]),
  );
  const results = new Map<Order, OrderToMake>();
  for (const order of [...promised, ...others]) {
    const product = productsById.get(order.productId);
    if (product === undefined) continue;
    const available = free.get(product.id) ?? 0;
    const fromStock = Math.min(available, order.pieces, shares.get(order.id) ?? Infinity);
    free.set(product.id, available - fromStock);
    const isLast = lastOfProduct.get(product.id) === order.id;
    const refill = isLast ? Math.max(0, product.safetyStockPieces - product.stockPieces) : 0;
    results.set(order, makeOne({ order, product, fromStock, refill }));
  }
  return orders.flatMap((order) => results.get(order) ?? []);
}

/** Pieces of the stock that promised orders have for themselves, by order. */
export type StockShares = ReadonlyMap<string, number>;

const NO_SHARES: StockShares = new Map();

/** Pieces of a product's stock that no order has, safety stock apart: what one order more may be promised. */
export function stockLeft(
  product: Product,
  orders: readonly Order[],
  shares: StockShares = NO_SHARES,
): number {
  const own = orders.filter(({ productId }) => productId === product.id);
  const taken = ordersToMake(own, [product], shares).reduce(
    (sum, { fromStockPieces }) => sum + fromStockPieces,
    0,
  );
  return Math.max(0, product.stockPieces - product.safetyStockPieces) - taken;
}

function byDue(a: Order, b: Order): number {
  if (a.dueAt !== b.dueAt) return a.dueAt - b.dueAt;
  if (a.kind !== b.kind) return a.kind === "firm" ? -1 : 1;
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}

interface Netted {
  readonly order: Order;
  readonly product: Product;
  readonly fromStock: number;
  readonly refill: number;
}

function makeOne({ order, product, fromStock, refill }: Netted): OrderToMake {
  const net = order.pieces - fromStock + refill;
  const atLeast = net === 0 ? 0 : Math.max(net, product.leastRunPieces);
  const good = roundUpToUnit(atLeast, product, product.roundingUnit);
  const gross = grossPiecesFor(good, product.runScrapShare);
  const surplus = good - net;
  const trail = [`${grouped(order.pieces)} ordered`];
  if (fromStock > 0)
    trail.push(`${grouped(fromStock)} from stock, ${grouped(order.pieces - fromStock)} left`);
  if (refill > 0) trail.push(`${grouped(refill)} more to bring the stock back to its safety level`);
  if (net === 0) trail.push("nothing to make");
  if (atLeast > net) trail.push(`least run is ${grouped(product.leastRunPieces)}`);
  if (good > atLeast) {
    const size = piecesPerUnit(product, product.roundingUnit);
    const units = good / size;
    trail.push(
      `rounded up to ${grouped(units)} ${product.roundingUnit}${units === 1 ? "" : "s"} of ${grouped(size)}: ${grouped(good)}`,
    );
  }
  if (gross > good)
    trail.push(`${percent(product.runScrapShare)} scrap while running: ${grouped(gross)} to form`);
  const withinOverTolerance = surplus <= Math.floor(order.pieces * order.overTolerance + 1e-9);
  if (surplus > 0 && !withinOverTolerance) trail.push(`${grouped(surplus)} go to stock`);
  return {
    orderId: order.id,
    productId: product.id,
    orderedPieces: order.pieces,
    fromStockPieces: fromStock,
    toSafetyStockPieces: refill,
    goodPiecesToMake: good,
    grossPieces: gross,
    surplusPieces: surplus,
    withinOverTolerance,
    trail,
  };
}

/** Whole number with thousands set apart by commas. */
function grouped(value: number): string {
  return String(value).replace(/\B(?=(\d{3})+$)/g, ",");
}

function percent(share: number): string {
  return `${Math.round(share * 1000) / 10} %`;
}
