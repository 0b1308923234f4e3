import type { FormingLine } from "../plant/forming-line.ts";
import type { Mould } from "../plant/mould.ts";
import type { Plant } from "../plant/plant.ts";
import type { Product } from "../plant/product.ts";
import type { InsertId } from "../plant/scalars.ts";
import type { Sheet } from "../plant/sheet.ts";

/** How pieces are counted and packed at the end of a line. */
export interface PackingFormat {
  readonly piecesPerStack: number;
  readonly stacksPerCarton: number;
  readonly cartonsPerPallet: number;
}

/**
 * What hangs on a line and is set there. Null: nothing there, or not needed by what runs. Stacker tooling, rim tooling and
 * packing format stay on the line when the mould is taken out.
 */
export interface LineState {
  readonly mould: Mould | null;
  readonly insertId: InsertId | null;
  readonly sheet: Sheet | null;
  readonly stackerTooling: string | null;
  readonly rimTooling: string | null;
  readonly packing: PackingFormat | null;
}

/** A line with nothing on it. */
export const EMPTY_LINE: LineState = {
  mould: null,
  insertId: null,
  sheet: null,
  stackerTooling: null,
  rimTooling: null,
  packing: null,
};

export interface Making {
  readonly product: Product;
  readonly mould: Mould;
  readonly insertId: InsertId | null;
  readonly sheet: Sheet;
}

/** State a line must be in to make a product with one of its moulds. Rim tooling counts only where the rim is rolled. */
export function stateToMake({ product, mould, insertId, sheet }: Making): LineState {
  return {
    mould,
    insertId,
    sheet,
    stackerTooling: mould.stackerTooling,
    rimTooling: product.rimRolled ? mould.rimTooling : null,
    packing: packingFormatOf(product),
  };
}

/** The same state after the mould is taken out; the state itself when none hangs. */
export function strippedState(state: LineState): LineState {
  return state.mould === null && state.insertId === null ? state : { ...state, mould: null, insertId: null };
}

/** State that a line's record says it is in now; ids that the plant does not know count as nothing mounted. */
export function stateMountedOn(line: FormingLine, plant: Plant): LineState {
  const { mouldId, insertId, sheetId, productId } = line.mounted;
  const mould = plant.moulds.find((candidate) => candidate.id === mouldId) ?? null;
  const product = plant.products.find((candidate) => candidate.id === productId) ?? null;
  return {
    mould,
    insertId: mould === null ? null : insertId,
    sheet: plant.sheets.find((candidate) => candidate.id === sheetId) ?? null,
    stackerTooling: mould?.stackerTooling ?? null,
    rimTooling: product === null || product.rimRolled ? (mould?.rimTooling ?? null) : null,
    packing: product === null ? null : packingFormatOf(product),
  };
}

/**
 * Text that is equal for two states exactly when no change lies between them: same mould, insert, sheet, stacker tooling,
 * rim tooling and packing format. Copies of a mould and products that share all of these do not differ.
 */
export function setupIdentity(state: LineState): string {
  const { mould, insertId, sheet, stackerTooling, rimTooling, packing } = state;
  return JSON.stringify([
    mould?.id ?? null,
    insertId,
    sheet?.id ?? null,
    stackerTooling,
    rimTooling,
    packing === null ? null : [packing.piecesPerStack, packing.stacksPerCarton, packing.cartonsPerPallet],
  ]);
}

export function samePacking(one: PackingFormat, other: PackingFormat): boolean {
  return (
    one.piecesPerStack === other.piecesPerStack &&
    one.stacksPerCarton === other.stacksPerCarton &&
    one.cartonsPerPallet === other.cartonsPerPallet
  );
}

function packingFormatOf(product: Product): PackingFormat {
  const { piecesPerStack, stacksPerCarton, cartonsPerPallet } = product;
  return { piecesPerStack, stacksPerCarton, cartonsPerPallet };
}
