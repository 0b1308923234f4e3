import { localTextAt } from "@formweek/capacity-model";
import type { Order, Plant } from "@formweek/capacity-model";
import type { Table } from "../ports/table.ts";
import { writeCell } from "./column-spec.ts";
import type { TableSpec } from "./column-spec.ts";
import { orderTable } from "./order-table.ts";
import { plantTables } from "./plant-tables.ts";

type Fields = Readonly<Record<string, unknown>>;

/** The order book in the format in which it is loaded; times by the plant's clock. */
export function tableOfOrders(orders: readonly Order[], timeZone: string): Table {
  return tableOf(
    orderTable,
    orders.map((order) => ({
      ...order,
      due: localTextAt(timeZone, order.dueAt),
      earliestStart: order.earliestStartAt === null ? null : localTextAt(timeZone, order.earliestStartAt),
    })),
  );
}

/** The plant in the format in which it is loaded: one table each, empty ones left out. */
export function tablesOfPlant(plant: Plant): readonly Table[] {
  const rows: Record<keyof typeof plantTables, readonly Fields[]> = {
    plant: [plant],
    calendars: plant.calendars,
    shifts: childRows(plant.calendars, "calendarId", (calendar) => calendar.shifts),
    closures: childRows(plant.calendars, "calendarId", (calendar) => calendar.closures),
    extraShifts: childRows(plant.calendars, "calendarId", (calendar) => calendar.extraShifts),
    lines: plant.lines,
    handling: childRows(plant.lines, "lineId", ({ openTime }) =>
      openTime.kind === "table" ? openTime.rows : [],
    ),
    drives: childRows(plant.lines, "lineId", ({ openTime }) =>
      openTime.kind === "drives" ? [openTime] : [],
    ),
    lineClosures: plant.lineClosures,
    addedShifts: plant.addedShifts,
    moulds: plant.moulds,
    mouldSpells: childRows(plant.moulds, "mouldId", (mould) => mould.outOfService),
    polymers: plant.polymers,
    sheets: plant.sheets,
    sheetArrivals: childRows(plant.sheets, "sheetId", (sheet) => sheet.arrivals),
    products: plant.products,
    provenRates: plant.provenRates,
    setterTeams: plant.setterTeams,
    trolleys: plant.trolleys,
    operatorCrews: plant.operatorPools.flatMap((pool) =>
      pool.crews.map((crew) => ({ id: pool.id, name: pool.name, ...crew })),
    ),
    changeoverRules: plant.changeoverRules,
    mouldClasses: plant.changeoverRules.flatMap((rules) =>
      rules.mouldClasses.map((one) => ({ lineIds: rules.lineIds, ...one })),
    ),
  };
  return Object.entries(plantTables)
    .map(([key, spec]) => tableOf(spec, rows[key as keyof typeof plantTables]))
    .filter((table) => table.rows.length > 1);
}

function childRows<Parent extends { readonly id: string }>(
  parents: readonly Parent[],
  parentField: string,
  children: (parent: Parent) => readonly Fields[],
): readonly Fields[] {
  return parents.flatMap((parent) =>
    children(parent).map((child) => ({ [parentField]: parent.id, ...child })),
  );
}

function tableOf(spec: TableSpec, records: readonly Fields[]): Table {
  const header = spec.columns.map((column) => column.header);
  const rows = records.map((record) =>
    spec.columns.map((column) => writeCell(column.kind, fieldAt(record, column.field))),
  );
  return { name: spec.name, rows: [header, ...rows] };
}

function fieldAt(record: Fields, path: string): unknown {
  return path
    .split(".")
    .reduce<unknown>(
      (value, step) => (typeof value === "object" && value !== null ? (value as Fields)[step] : undefined),
      record,
    );
}
