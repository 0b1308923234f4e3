import { z } from "zod";
import {
  InsertId,
  LineId,
  MouldId,
  ProductId,
  SheetId,
  displayName,
  nonNegative,
  pieces,
  positive,
  share,
} from "./scalars.ts";

export const RoundingUnit = z.enum(["piece", "stack", "carton", "pallet"]);
export type RoundingUnit = z.infer<typeof RoundingUnit>;

export const MouldChoice = z.object({ mouldId: MouldId, insertId: InsertId.nullable() });
export type MouldChoice = z.infer<typeof MouldChoice>;

export const Product = z.object({
  id: ProductId,
  name: displayName,
  moulds: z.array(MouldChoice).min(1).max(20),
  sheetId: SheetId,
  netMassG: positive,
  /** Thickest section that must be form-stable at demoulding. */
  wallThicknessMm: positive,
  rimRolled: z.boolean(),
  piecesPerStack: z.int().min(1).max(100_000),
  stacksPerCarton: z.int().min(1).max(10_000),
  cartonsPerPallet: z.int().min(1).max(1_000),
  /** Rejects while running, share of pieces formed. */
  runScrapShare: share.max(0.9),
  leastRunPieces: pieces,
  roundingUnit: RoundingUnit,
  /** Hold after the last piece before printing or dispatch. */
  conditioningHours: nonNegative.max(2000),
  stockPieces: pieces,
  safetyStockPieces: pieces,
});
export type Product = z.infer<typeof Product>;

/** Rate measured on the shop floor; it wins over the computed one. */
export const ProvenRate = z.object({
  lineId: LineId,
  mouldId: MouldId,
  productId: ProductId,
  cyclesPerMin: positive.max(200),
  reports: z.int().min(1),
  /** Standard deviation of the reported rates, cycles/min. */
  spreadCyclesPerMin: nonNegative,
});
export type ProvenRate = z.infer<typeof ProvenRate>;
