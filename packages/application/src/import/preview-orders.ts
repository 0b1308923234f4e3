import type { Order, Plant } from "@formweek/capacity-model";
import type { OptionRefusal } from "@formweek/scheduler";
import { planWindow } from "../planning/plan-window.ts";
import { productOptions } from "../planning/job-options.ts";
import { SetupStates } from "../planning/setup-states.ts";
import type { Table } from "../ports/table.ts";
import type { ImportFault } from "./import-fault.ts";
import { faultWords } from "./import-words.ts";
import { listedFaults } from "./import-outcome.ts";
import type { ImportOutcome, Misfit, UnplannableRow } from "./import-outcome.ts";
import { orderOfRow } from "./order-row.ts";
import { orderTable } from "./order-table.ts";
import { ProductFinder } from "./product-finder.ts";
import { isNamed, readTable } from "./read-table.ts";
import type { ReadRows } from "./read-table.ts";
import { sameRecord } from "./same-record.ts";

export interface OrdersPreviewInput {
  readonly tables: readonly Table[];
  readonly plant: Plant;
  /** The order book as it stands. */
  readonly stored: readonly Order[];
  /** Seconds since the epoch. */
  readonly now: number;
}

/** Reasons that a row names at most. */
const MOST_REASONS = 12;

/** Reports of rows that cannot be planned are cut here. */
const MOST_UNPLANNABLE = 500;

/**
 * Dry run of an order file: reads every row, names every bad one, and works out what would be added and changed. Orders
 * that the file does not name stay, and so do the fields of an order for which it has no column. Loading the same file
 * again finds nothing to change.
 */
export function previewOrders({ tables, plant, stored, now }: OrdersPreviewInput): ImportOutcome {
  const { read, faults } = orderTables(tables);
  const finder = new ProductFinder(plant);
  const booked = new Map<string, Order>(stored.map((order) => [order.id, order]));
  const planStart = planWindow(plant, now).start;
  const firstRows = new Map<string, FirstRow>();
  const good: { readonly order: Order; readonly row: number }[] = [];
  let bad = 0;
  for (const table of read) {
    faults.push(...table.faults);
    for (const row of table.rows) {
      if (row.bad) {
        bad += 1;
        continue;
      }
      const made = orderOfRow(row, { plant, finder, table, planStart });
      const repeated = made.order === null ? null : repeatFault(made.order, row.row, table, firstRows);
      faults.push(...made.faults, ...(repeated === null ? [] : [repeated]));
      if (made.order === null || repeated !== null) bad += 1;
      else good.push({ order: withAbsent(made.order, booked.get(made.order.id), table), row: row.row });
    }
  }
  return outcomeOf({
    plant,
    stored,
    faults,
    good,
    bad,
    rows: read.reduce((sum, table) => sum + table.rows.length, 0),
  });
}

/** Fields of an order by the optional columns that hold them. */
const optionalFields: Readonly<Record<string, keyof Order>> = {
  customer: "customer",
  earliestStart: "earliestStartAt",
  weight: "weight",
  kind: "kind",
  underTolerance: "underTolerance",
  overTolerance: "overTolerance",
  partsAllowed: "partsAllowed",
};

/** A file without a column says nothing about it: an order that is booked already keeps its value there. */
function withAbsent(order: Order, booked: Order | undefined, { headers }: ReadRows): Order {
  if (booked === undefined) return order;
  const absent = Object.entries(optionalFields).filter(([column]) => !headers.has(column));
  return { ...order, ...Object.fromEntries(absent.map(([, field]) => [field, booked[field]])) };
}

/** The sheets that hold orders: those so named, else every one whose header fits; the first one's fault when none does. */
function orderTables(tables: readonly Table[]): {
  readonly read: readonly ReadRows[];
  readonly faults: ImportFault[];
} {
  const named = tables.filter((table) => isNamed(table, orderTable));
  const candidates = (named.length > 0 ? named : tables).map((table) => readTable(table, orderTable));
  const fitting = candidates.filter((table) => table.headers.size > 0);
  const faults: ImportFault[] = [];
  if (fitting.length > 0) {
    const used = new Set(fitting.map((table) => table.sheet));
    for (const table of tables) if (!used.has(table.name)) faults.push(unusedSheet(table.name));
    return { read: fitting, faults };
  }
  faults.push(...candidates.slice(0, 1).flatMap((table) => table.faults));
  return { read: [], faults };
}

function unusedSheet(sheet: string): ImportFault {
  return {
    sheet,
    row: null,
    column: null,
    value: "",
    ...faultWords("no-orders-on-sheet"),
    severity: "warning",
  };
}

/** Where an order stands first. */
type FirstRow = Readonly<Record<"row" | "sheet", string>>;

function repeatFault(
  order: Order,
  row: number,
  table: ReadRows,
  firstRows: Map<string, FirstRow>,
): ImportFault | null {
  const first = firstRows.get(order.id);
  if (first === undefined) {
    firstRows.set(order.id, { row: String(row), sheet: table.sheet });
    return null;
  }
  return {
    sheet: table.sheet,
    row,
    column: table.headers.get("id") ?? "order",
    value: order.id,
    ...faultWords("repeated-order", first),
    severity: "error",
  };
}

interface Found {
  readonly plant: Plant;
  readonly stored: readonly Order[];
  readonly faults: readonly ImportFault[];
  readonly good: readonly { readonly order: Order; readonly row: number }[];
  readonly bad: number;
  readonly rows: number;
}

function outcomeOf({ plant, stored, faults, good, bad, rows }: Found): ImportOutcome {
  const before = new Map<string, Order>(stored.map((order) => [order.id, order]));
  const changed = good.filter(
    ({ order }) => before.has(order.id) && !sameRecord(before.get(order.id), order),
  );
  const added = good.filter(({ order }) => !before.has(order.id));
  const unplannable = unplannableRows(plant, good);
  const { listed, cut } = listedFaults(faults);
  return {
    rows,
    counts: {
      added: added.length,
      changed: changed.length,
      unchanged: good.length - added.length - changed.length,
    },
    bad,
    faults: listed,
    cannotBePlanned: unplannable.slice(0, MOST_UNPLANNABLE),
    cannotBePlannedCount: unplannable.length,
    truncated: cut || unplannable.length > MOST_UNPLANNABLE,
    changes: [...added, ...changed].map(({ order }) => ({
      before: before.get(order.id) ?? null,
      after: order,
    })),
    change:
      good.length === 0
        ? null
        : {
            kind: "orders",
            change: { put: [...added, ...changed].map(({ order }) => order), removeIds: [] },
          },
  };
}

/** Orders of products that no line can make, with the fit check's words; worked out once per product. */
function unplannableRows(plant: Plant, good: Found["good"]): readonly UnplannableRow[] {
  const states = new SetupStates();
  const reasons = new Map<string, readonly Misfit[]>();
  return good.flatMap(({ order, row }) => {
    const known = reasons.get(order.productId) ?? reasonsAgainst(plant, order.productId, states);
    reasons.set(order.productId, known);
    return known.length === 0 ? [] : [{ orderId: order.id, row, reasons: known }];
  });
}

function reasonsAgainst(plant: Plant, productId: string, states: SetupStates): readonly Misfit[] {
  const product = plant.products.find((record) => record.id === productId);
  if (product === undefined) return [];
  const { options, refusals } = productOptions(plant, product, states);
  if (options.length > 0) return [];
  const byText = new Map(refusals.map((refusal) => [refusal.text, misfitOf(refusal)]));
  return [...byText.values()].slice(0, MOST_REASONS);
}

function misfitOf({ mouldId, code, text, compared }: OptionRefusal): Misfit {
  if (compared === undefined) return { text };
  return { text, cause: { kind: "does not fit", mouldId, check: code, compared } };
}
