import {
  type Order,
  ordersToMake,
  piecesPerUnit,
  stockLeft,
  type OrderToMake,
} from "@formweek/capacity-model";
import type { Product } from "@formweek/capacity-model";
import type { PromiseQuantity, QuantityStep } from "./promise-answer.ts";
import type { StandingDesk } from "./standing-desk.ts";

/** What an order of a product comes to when it may take no stock that another has. */
export function nettedBehind(order: Order, product: Product, standing: StandingDesk): OrderToMake {
  const shares = new Map(standing.records.stockShares.map(({ orderId, pieces }) => [orderId, pieces]));
  const left = stockLeft(product, standing.orders, shares);
  const [made] = ordersToMake([order], [product], new Map([[order.id, left]]));
  if (made === undefined) throw new Error(`order ${order.id} is of another product than ${product.id}`);
  return made;
}

/** The same apart from words. */
export function quantityOf(made: OrderToMake, product: Product): PromiseQuantity {
  return {
    fromStockPieces: made.fromStockPieces,
    toMakePieces: made.goodPiecesToMake,
    grossPieces: made.grossPieces,
    steps: stepsOf(made, product),
  };
}

function stepsOf(made: OrderToMake, product: Product): readonly QuantityStep[] {
  const { fromStockPieces, goodPiecesToMake: good, grossPieces, orderedPieces } = made;
  const net = orderedPieces - fromStockPieces;
  const atLeast = net === 0 ? 0 : Math.max(net, product.leastRunPieces);
  const steps: QuantityStep[] = [];
  if (fromStockPieces > 0) steps.push({ kind: "stock", pieces: fromStockPieces });
  if (atLeast > net) steps.push({ kind: "least run", pieces: product.leastRunPieces });
  if (good > atLeast) {
    const unitPieces = piecesPerUnit(product, product.roundingUnit);
    steps.push({ kind: "whole units", unit: product.roundingUnit, unitPieces, units: good / unitPieces });
  }
  if (grossPieces > good) steps.push({ kind: "scrap", share: product.runScrapShare, pieces: grossPieces });
  return steps;
}
