import type { Product, RoundingUnit } from "../plant/product.ts";

/** Fields of a product that say how its pieces are packed. */
export type Packed = Pick<Product, "piecesPerStack" | "stacksPerCarton" | "cartonsPerPallet">;

/** Packing units that a number of pieces fills or begins. */
export interface PackingChain {
  readonly stacks: number;
  readonly cartons: number;
  readonly pallets: number;
}

/** Pieces in one unit of the chain piece → stack → carton → pallet. */
export function piecesPerUnit(product: Packed, unit: RoundingUnit): number {
  const perCarton = product.piecesPerStack * product.stacksPerCarton;
  switch (unit) {
    case "piece":
      return 1;
    case "stack":
      return product.piecesPerStack;
    case "carton":
      return perCarton;
    case "pallet":
      return perCarton * product.cartonsPerPallet;
  }
}

/** Stacks, cartons and pallets needed for so many pieces, begun ones counted whole; all 0 for no pieces. */
export function packingChainOf(pieces: number, product: Packed): PackingChain {
  const stacks = Math.ceil(pieces / product.piecesPerStack);
  const cartons = Math.ceil(stacks / product.stacksPerCarton);
  return { stacks, cartons, pallets: Math.ceil(cartons / product.cartonsPerPallet) };
}

/** The least multiple of the unit that holds so many pieces. */
export function roundUpToUnit(pieces: number, product: Packed, unit: RoundingUnit): number {
  const size = piecesPerUnit(product, unit);
  return Math.ceil(pieces / size) * size;
}

/** Whole machine cycles for so many pieces, >= 0; `cavities` >= 1. */
export function cyclesForPieces(pieces: number, cavities: number): number {
  return Math.ceil(pieces / cavities);
}

/**
 * Pieces to form so that enough are good: good / (1 - scrap share), rounded up to a whole piece. A slack of what rounding to
 * binary numbers can add keeps a share that none of them holds exactly from adding a piece; it is small enough never to
 * swallow a part of a piece, up to 10¹⁰ pieces and shares in thousandths.
 */
export function grossPiecesFor(goodPieces: number, scrapShare: number): number {
  const goodShare = 1 - scrapShare;
  const gross = goodPieces / goodShare;
  return Math.ceil(gross - gross * ((2 * Number.EPSILON) / goodShare));
}
