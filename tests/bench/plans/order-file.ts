import { tableOfOrders } from "@formweek/application";
import type { Order } from "@formweek/capacity-model";
import { offlinePorts } from "@formweek/composition";
import { demoOrders, demoPlant } from "@formweek/demo-plant";

const plant = demoPlant("full");
const patterns = demoOrders("full");

/** Orders like those of the demo's full week, under numbers of their own. */
function ordersLike(prefix: string, count: number): Order[] {
  return Array.from({ length: count }, (_, index) => {
    const pattern = patterns[index % patterns.length];
    if (pattern === undefined) throw new Error("The demo has no orders.");
    return { ...pattern, id: `${prefix}-${index}` as Order["id"] };
  });
}

export interface OrderFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly ids: readonly string[];
}

/** A file of orders as a planner would load it. */
export async function orderFile(prefix: string, count: number, format: "csv" | "xlsx"): Promise<OrderFile> {
  const orders = ordersLike(prefix, count);
  const table = tableOfOrders(orders, plant.timeZone);
  const { tableWriter } = offlinePorts();
  const bytes = format === "csv" ? tableWriter.csv(table) : await tableWriter.xlsx([table]);
  return { name: `orders.${format}`, bytes, ids: orders.map((order) => order.id) };
}
