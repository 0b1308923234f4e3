import { orderBookTable } from "../export/order-book-table.ts";
import type { TableLanguage } from "../export/table-words.ts";
import { plantNotFound } from "../not-found.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { withStates } from "./get-order-book.ts";
import { workingPlanOf } from "./working-plan-of.ts";
import { fileDate, fileOf, fileStem, type TableFormat, type WrittenFile } from "./written-file.ts";

/** The order book with each order's state in the working plan, as a table to take away; the file's name says the day. */
export const exportOrderBook: UseCase<
  PlantInput & { readonly format: TableFormat; readonly language: TableLanguage },
  WrittenFile
> = {
  role: "viewer",
  run: async ({ store, tableWriter, clock }, { plantId, format, language }) => {
    const known = await store.read(async (repositories) => ({
      stored: await repositories.plants.get(plantId),
      book: await repositories.orders.book(plantId),
      plan: await workingPlanOf(repositories, plantId),
    }));
    if (known.stored === null) return refused(plantNotFound(plantId));
    const { timeZone, products } = known.stored.plant;
    const orders = withStates(known.book.orders, known.plan?.document ?? null);
    const productNames = new Map<string, string>(products.map(({ id, name }) => [id, name]));
    const stem = `${fileStem(plantId)}-order-book-${fileDate(timeZone, clock.now(), "day")}`;
    const table = orderBookTable(orders, { timeZone, productNames }, language);
    return ok(await fileOf(tableWriter, table, { stem, format }));
  },
};
