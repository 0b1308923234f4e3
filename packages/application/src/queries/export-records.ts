import { tableOfOrders, tablesOfPlant } from "../import/write-tables.ts";
import { plantNotFound } from "../not-found.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

export type TableFormat = "csv" | "xlsx";

/** A file ready to be saved. */
export interface WrittenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** The order book as a file in the import format: loading it again changes nothing. */
export const exportOrders: UseCase<PlantInput & { readonly format: TableFormat }, WrittenFile> = {
  role: "viewer",
  run: async ({ store, tableWriter }, { plantId, format }) => {
    const known = await store.read(async ({ plants, orders }) => ({
      stored: await plants.get(plantId),
      book: await orders.book(plantId),
    }));
    if (known.stored === null) return refused(plantNotFound(plantId));
    const table = tableOfOrders(known.book.orders, known.stored.plant.timeZone);
    const bytes = format === "csv" ? tableWriter.csv(table) : await tableWriter.xlsx([table]);
    return ok({ name: `${fileStem(plantId)}-orders.${format}`, bytes });
  },
};

/** The plant's records as a workbook in the import format. */
export const exportPlant: UseCase<PlantInput, WrittenFile> = {
  role: "viewer",
  run: async ({ store, tableWriter }, { plantId }) => {
    const stored = await store.read(({ plants }) => plants.get(plantId));
    if (stored === null) return refused(plantNotFound(plantId));
    return ok({
      name: `${fileStem(plantId)}.xlsx`,
      bytes: await tableWriter.xlsx(tablesOfPlant(stored.plant)),
    });
  },
};

/** An id as part of a file name: what file systems or headers could trip over becomes "-". */
export function fileStem(id: string): string {
  return id.replace(/[^A-Za-z0-9._-]+/g, "-").replace(/^[-.]+/, "") || "plant";
}
