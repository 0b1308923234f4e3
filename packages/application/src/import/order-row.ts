import { Order, instantOfLocalText, localDateText, parseLocalDate } from "@formweek/capacity-model";
import type { Plant } from "@formweek/capacity-model";
import type { WallClock } from "./cell-time.ts";
import type { ImportFault } from "./import-fault.ts";
import { faultWords } from "./import-words.ts";
import type { FaultWords } from "./import-words.ts";
import { remedyOfOrderField } from "./order-remedies.ts";
import type { ProductFinder } from "./product-finder.ts";
import type { ReadRow, ReadRows } from "./read-table.ts";
import { valueFault } from "../value-fault.ts";

export interface OrderRowContext {
  readonly plant: Plant;
  readonly finder: ProductFinder;
  readonly table: ReadRows;
  /** Due times before it draw a warning. */
  readonly planStart: number;
}

/** A row as an order; null with faults when it is none. Warnings leave the order usable. */
export function orderOfRow(
  row: ReadRow,
  context: OrderRowContext,
): { readonly order: Order | null; readonly faults: readonly ImportFault[] } {
  const { finder, plant, table } = context;
  const faults: ImportFault[] = [];
  const fault = (field: string, severity: ImportFault["severity"], said: FaultWords): void => {
    const column = table.headers.get(field) ?? field;
    faults.push({
      sheet: table.sheet,
      row: row.row,
      column,
      value: table.shown(row.row, field),
      ...said,
      severity,
    });
  };
  const named = String(row.values["productId"]);
  const product = finder.find(named);
  if (product === undefined) {
    fault("productId", "error", faultWords("unknown-product", { nearest: finder.nearest(named).join("; ") }));
  }
  const dueAt = dueInstant(row.values["due"] as WallClock, plant.timeZone);
  const earliest = row.values["earliestStart"] as WallClock | null;
  const parsed = Order.safeParse({
    ...row.values,
    kind: String(row.values["kind"]).toLowerCase(),
    productId: product?.id ?? named,
    dueAt,
    earliestStartAt: earliest === null ? null : startInstant(earliest, plant.timeZone),
  });
  for (const issue of parsed.error?.issues ?? []) {
    const field = fieldOf(issue.path);
    fault(field, "error", {
      problem: issue.message,
      remedy: remedyOfOrderField(field),
      cause: valueFault({ ...issue }),
    });
  }
  if (dueAt < context.planStart) fault("due", "warning", faultWords("due-before-planning"));
  const bad = faults.some(({ severity }) => severity === "error");
  return { order: bad || !parsed.success ? null : parsed.data, faults };
}

/** A due day without a time means its end: midnight after it. */
function dueInstant({ date, time }: WallClock, zone: string): number {
  if (time !== null) return instantOfLocalText(zone, `${date}T${time}`) ?? 0;
  const day = parseLocalDate(date);
  return day === null ? 0 : (instantOfLocalText(zone, `${localDateText(day + 1)}T00:00`) ?? 0);
}

function startInstant({ date, time }: WallClock, zone: string): number {
  return instantOfLocalText(zone, `${date}T${time ?? "00:00"}`) ?? 0;
}

/** Field of the table that a field of the record was read from. */
function fieldOf(path: readonly PropertyKey[]): string {
  const field = String(path[0] ?? "");
  if (field === "dueAt") return "due";
  return field === "earliestStartAt" ? "earliestStart" : field;
}
