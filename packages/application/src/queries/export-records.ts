import { tableOfOrders, tablesOfPlant } from "../import/write-tables.ts";
import { plantNotFound } from "../not-found.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { fileOf, fileStem, type TableFormat, type WrittenFile } from "./written-file.ts";

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
    return ok(await fileOf(tableWriter, table, { stem: `${fileStem(plantId)}-orders`, format }));
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
