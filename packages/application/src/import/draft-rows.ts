import type { PlantTableKey } from "./plant-tables.ts";
import { keyOf, linesKey, nested, without } from "./plant-draft.ts";
import type { Collection, DraftRecord, Origin, PlantDraft } from "./plant-draft.ts";
import type { ReadRow, ReadRows } from "./read-table.ts";

/** A child row whose parent is nowhere to be found. */
export interface Orphan {
  readonly origin: Origin;
  readonly field: string;
  readonly parent: string;
}

/** Tables whose rows are records of their own. */
const RECORDS: Partial<Record<PlantTableKey, Collection>> = {
  calendars: "calendars",
  lines: "lines",
  moulds: "moulds",
  polymers: "polymers",
  sheets: "sheets",
  products: "products",
  addedShifts: "addedShifts",
  provenRates: "provenRates",
  setterTeams: "setterTeams",
  trolleys: "trolleys",
  changeoverRules: "changeoverRules",
};

/** Fields of a new record that its own table does not carry; child tables fill them. */
const STARTING: Partial<Record<PlantTableKey, DraftRecord>> = {
  calendars: { shifts: [], closures: [], extraShifts: [] },
  moulds: { outOfService: [] },
  sheets: { arrivals: [] },
  changeoverRules: { mouldClasses: [] },
};

/** Rows of a table of records that name a record of an earlier row again, with the row of its first mention. */
export function repeatedRows(
  key: PlantTableKey,
  table: ReadRows,
): readonly { readonly row: number; readonly firstRow: number }[] {
  const collection = RECORDS[key];
  if (collection === undefined) return [];
  const firstRows = new Map<string, number>();
  return table.rows.flatMap((row) => {
    if (row.bad) return [];
    const identity = keyOf(collection, row.values);
    const firstRow = firstRows.get(identity);
    if (firstRow !== undefined) return [{ row: row.row, firstRow }];
    firstRows.set(identity, row.row);
    return [];
  });
}

interface ChildTable {
  readonly collection: Collection;
  /** Field of the row that names the parent. */
  readonly parentField: string;
  /** Child list of the parent. */
  readonly childField: string;
}

const CHILDREN: Partial<Record<PlantTableKey, ChildTable>> = {
  shifts: { collection: "calendars", parentField: "calendarId", childField: "shifts" },
  closures: { collection: "calendars", parentField: "calendarId", childField: "closures" },
  extraShifts: { collection: "calendars", parentField: "calendarId", childField: "extraShifts" },
  mouldSpells: { collection: "moulds", parentField: "mouldId", childField: "outOfService" },
  sheetArrivals: { collection: "sheets", parentField: "sheetId", childField: "arrivals" },
  mouldClasses: { collection: "changeoverRules", parentField: "lineIds", childField: "mouldClasses" },
};

/** Lays the rows of one table over the draft; returns child rows without a parent. */
export function layRows(draft: PlantDraft, key: PlantTableKey, table: ReadRows): readonly Orphan[] {
  const rows = table.rows.filter((row) => !row.bad);
  const child = CHILDREN[key];
  const collection = RECORDS[key];
  if (child !== undefined) return layChildren(draft, child, { table, rows });
  if (collection !== undefined) {
    for (const row of rows) draft.put(collection, nested(row), { table, row: row.row }, STARTING[key]);
    return [];
  }
  switch (key) {
    case "plant":
      for (const row of rows) draft.putPlant(nested(row), { table, row: row.row });
      return [];
    case "handling":
      return layOpenTimes(draft, { table, rows }, (own) => ({
        kind: "table",
        rows: own
          .map((row) => without(nested(row), "lineId"))
          .sort((a, b) => Number(a["depthMm"]) - Number(b["depthMm"])),
      }));
    case "drives":
      return layOpenTimes(draft, { table, rows }, (own) => ({
        kind: "drives",
        ...without(nested(own[0] as ReadRow), "lineId"),
      }));
    case "lineClosures":
      layLineClosures(draft, { table, rows });
      return [];
    case "operatorCrews":
      layPools(draft, { table, rows });
      return [];
    default:
      return [];
  }
}

interface Rows {
  readonly table: ReadRows;
  readonly rows: readonly ReadRow[];
}

const parentKey = (row: ReadRow, field: string): string =>
  field === "lineIds" ? linesKey(row.values[field]) : String(row.values[field]);

function byParent({ rows }: Rows, field: string): ReadonlyMap<string, readonly ReadRow[]> {
  const groups = new Map<string, ReadRow[]>();
  for (const row of rows) {
    const key = parentKey(row, field);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return groups;
}

function layChildren(draft: PlantDraft, child: ChildTable, input: Rows): readonly Orphan[] {
  return [...byParent(input, child.parentField)].flatMap(([key, rows]) => {
    const list = rows.map((row) => {
      const part = without(nested(row), child.parentField);
      draft.remember(part, { table: input.table, row: row.row });
      return part;
    });
    const placed = draft.setChild({ collection: child.collection, key }, child.childField, list);
    return placed ? [] : orphansOf(rows, child.parentField, input);
  });
}

function layOpenTimes(
  draft: PlantDraft,
  input: Rows,
  openTime: (rows: readonly ReadRow[]) => DraftRecord,
): readonly Orphan[] {
  return [...byParent(input, "lineId")].flatMap(([key, rows]) => {
    const part = openTime(rows);
    draft.remember(part, { table: input.table, row: rows[0]?.row ?? 1 });
    return draft.setChild({ collection: "lines", key }, "openTime", part)
      ? []
      : orphansOf(rows, "lineId", input);
  });
}

function orphansOf(rows: readonly ReadRow[], field: string, { table }: Rows): readonly Orphan[] {
  return rows.map((row) => ({ origin: { table, row: row.row }, field, parent: String(row.values[field]) }));
}

function layLineClosures(draft: PlantDraft, input: Rows): void {
  for (const [lineId, rows] of byParent(input, "lineId")) {
    const closures = rows.map((row) => {
      const closure = nested(row);
      draft.remember(closure, { table: input.table, row: row.row });
      return closure;
    });
    draft.replaceWhere("lineClosures", (record) => record["lineId"] === lineId, closures);
  }
}

function layPools(draft: PlantDraft, input: Rows): void {
  for (const [id, rows] of byParent(input, "id")) {
    const crews = rows.map((row) => ({ calendarId: row.values["calendarId"], heads: row.values["heads"] }));
    draft.put(
      "operatorPools",
      { id, name: rows[0]?.values["name"], crews },
      { table: input.table, row: rows[0]?.row ?? 1 },
    );
  }
}
