import { Product } from "@formweek/capacity-model";
import type { Mould, Sheet } from "@formweek/capacity-model";
import { demoMouldKinds, demoMoulds } from "./moulds.ts";
import { demoSheets } from "./sheets.ts";

const densityGPerCm3 = { PP: 0.905, PS: 1.05, APET: 1.36, PLA: 1.24, HDPE: 0.95, PVC: 1.4 } as const;

/** Which sheets a mould's products are made of, by kind and width of the base. */
const sheetIds = {
  cup: {
    930: ["PP12-930-natural", "PP12-930-white", "PP12-930-black"],
    730: ["PP14-730-white", "PP14-730-green"],
  },
  tub: { 930: ["PP15-930-white", "PP15-930-natural"], 730: ["PP14-730-white", "PP09-730-natural"] },
  lid: { 930: ["PS10-930-white"], 730: ["APET04-730-clear", "PS08-730-red"] },
  tray: { 930: ["PS10-930-white", "PP12-930-black"], 730: ["APET04-730-clear", "PP09-730-natural"] },
} as const;

const packing = {
  cup: { piecesPerStack: 50, stacksPerCarton: 24, cartonsPerPallet: 24 },
  tub: { piecesPerStack: 40, stacksPerCarton: 12, cartonsPerPallet: 20 },
  lid: { piecesPerStack: 100, stacksPerCarton: 20, cartonsPerPallet: 20 },
  tray: { piecesPerStack: 60, stacksPerCarton: 8, cartonsPerPallet: 24 },
} as const;

function productOf(mould: Mould, sheet: Sheet, insertId: string | null): Product {
  const kind = demoMouldKinds.get(mould.family) ?? "tray";
  const cavityAreaCm2 = (mould.cutLengthPerCavityMm / 10) ** 2 / (kind === "tray" ? 16 : 4 * Math.PI);
  const variant = insertId === null ? "" : ` ${insertId}`;
  return Product.parse({
    id: `${mould.id} ${sheet.colour.name}${variant}`,
    name: `${mould.name.replace(` ${mould.family}`, ` ${mould.family.split("-")[0] ?? ""}`)} ${sheet.polymer} ${sheet.colour.name}${variant}`,
    moulds: [{ mouldId: mould.id, insertId }],
    sheetId: sheet.id,
    netMassG: Math.round(cavityAreaCm2 * sheet.thicknessMm * densityGPerCm3[sheet.polymer]) / 10,
    wallThicknessMm: Math.round(sheet.thicknessMm * (kind === "lid" ? 75 : 40)) / 100,
    rimRolled: kind === "cup",
    ...packing[kind],
    runScrapShare: 0.02,
    leastRunPieces: mould.cavitiesAlong * mould.cavitiesAcross * 2000,
    roundingUnit: kind === "cup" ? "pallet" : "carton",
    conditioningHours: kind === "cup" && sheet.polymer === "PP" ? 12 : 0,
    stockPieces: 0,
    safetyStockPieces: 0,
  });
}

/** A few shelves are not empty: every ninth product has stock, every eighteenth a safety stock. */
function withStock(product: Product, index: number): Product {
  const pallet = product.piecesPerStack * product.stacksPerCarton * product.cartonsPerPallet;
  if (index % 9 !== 4) return product;
  return { ...product, stockPieces: pallet * 4, safetyStockPieces: index % 18 === 4 ? pallet : 0 };
}

/** About ninety products of the demo plant; invented. Some cups come from either of two bases. */
export const demoProducts: readonly Product[] = demoMoulds
  .flatMap((mould) => {
    const kind = demoMouldKinds.get(mould.family) ?? "tray";
    const width = mould.footprintWidthMm > 700 ? 930 : 730;
    const sheets = sheetIds[kind][width].flatMap((id) => demoSheets.filter((sheet) => sheet.id === id));
    const inserts: readonly (string | null)[] = mould.inserts.length > 0 ? mould.inserts : [null];
    return sheets.flatMap((sheet) => inserts.map((insert) => productOf(mould, sheet, insert)));
  })
  .map(withStock);
