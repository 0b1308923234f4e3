import { Plant, plantFaults } from "@formweek/capacity-model";
import type { PlantFault } from "@formweek/capacity-model";
import type { Table } from "../ports/table.ts";
import type { ImportFault } from "./import-fault.ts";
import { listedFaults } from "./import-outcome.ts";
import type { ImportOutcome } from "./import-outcome.ts";
import { layRows, repeatedRows } from "./draft-rows.ts";
import type { Orphan } from "./draft-rows.ts";
import { PlantDraft } from "./plant-draft.ts";
import { plantTables } from "./plant-tables.ts";
import type { PlantTableKey } from "./plant-tables.ts";
import { isNamed, readTable } from "./read-table.ts";
import type { ReadRows } from "./read-table.ts";
import { sameRecord } from "./same-record.ts";
import { faultWords } from "./import-words.ts";
import type { FaultWords } from "./import-words.ts";
import { valueFault } from "../value-fault.ts";

export interface PlantPreviewInput {
  readonly tables: readonly Table[];
  /** The plant as it stands; null for a new one. */
  readonly stored: Plant | null;
  /** Id that the plant must keep; null where the file decides. */
  readonly plantId: string | null;
}

/** Id of the plant that the tables are about; null where they do not say. */
export function plantNamedIn(tables: readonly Table[]): string | null {
  const table = tables.find((one) => isNamed(one, plantTables.plant));
  const id = table === undefined ? undefined : readTable(table, plantTables.plant).rows[0]?.values["id"];
  return typeof id === "string" ? id : null;
}

/** Records before their children, so that every child finds its parent. */
const ORDER: readonly PlantTableKey[] = [
  "plant",
  "calendars",
  "polymers",
  "sheets",
  "lines",
  "moulds",
  "products",
  "setterTeams",
  "trolleys",
  "operatorCrews",
  "changeoverRules",
  "provenRates",
  "shifts",
  "closures",
  "extraShifts",
  "handling",
  "drives",
  "lineClosures",
  "addedShifts",
  "mouldSpells",
  "sheetArrivals",
  "mouldClasses",
];

/**
 * Dry run of plant data: rows add or change records by id, child rows replace their parent's list, records not named
 * stay. A plant hangs together or not at all, so one bad row keeps all of it from being taken over.
 */
export function previewPlant({ tables, stored, plantId }: PlantPreviewInput): ImportOutcome {
  const draft = new PlantDraft(stored);
  const faults: ImportFault[] = [];
  const bad = new Set<string>();
  let rows = 0;
  for (const { key, read } of readTables(tables, faults)) {
    rows += read.rows.length;
    faults.push(
      ...read.faults,
      ...repeatedRows(key, read).map((repeat) => repeatFault(key, read, repeat)),
      ...layRows(draft, key, read).map(orphanFault),
    );
  }
  const { plant, faults: recordFaults } = judged(draft, plantId);
  faults.push(...recordFaults);
  for (const fault of faults)
    if (fault.severity === "error" && fault.row !== null) bad.add(`${fault.sheet}:${String(fault.row)}`);
  const { listed, cut } = listedFaults(faults);
  const failed = faults.some(({ severity }) => severity === "error");
  return {
    rows,
    counts: failed || plant === null ? { added: 0, changed: 0, unchanged: 0 } : countsOf(stored, plant),
    bad: bad.size,
    faults: listed,
    cannotBePlanned: [],
    cannotBePlannedCount: 0,
    truncated: cut,
    changes: [],
    change: failed || plant === null ? null : { kind: "plant", plant },
  };
}

function readTables(
  tables: readonly Table[],
  faults: ImportFault[],
): readonly { readonly key: PlantTableKey; readonly read: ReadRows }[] {
  const used = new Set<Table>();
  const found = ORDER.flatMap((key) =>
    tables
      .filter((table) => isNamed(table, plantTables[key]))
      .map((table) => {
        used.add(table);
        return { key, read: readTable(table, plantTables[key]) };
      }),
  );
  const known = Object.values(plantTables)
    .map(({ name }) => name)
    .join(", ");
  for (const table of tables) {
    if (used.has(table)) continue;
    faults.push({
      sheet: table.name,
      row: null,
      column: null,
      value: "",
      ...faultWords("no-plant-data-on-sheet", { known }),
      severity: found.length === 0 ? "error" : "warning",
    });
  }
  return found;
}

/** The last of two rows would win in silence; which of them is right, only the planner knows. */
function repeatFault(
  key: PlantTableKey,
  read: ReadRows,
  { row, firstRow }: { readonly row: number; readonly firstRow: number },
): ImportFault {
  const field = plantTables[key].columns[0]?.field ?? "id";
  return {
    sheet: read.sheet,
    row,
    column: read.headers.get(field) ?? null,
    value: read.shown(row, field),
    ...faultWords("repeated-record", { row: String(firstRow) }),
    severity: "error",
  };
}

function orphanFault({ origin, field, parent }: Orphan): ImportFault {
  return {
    sheet: origin.table.sheet,
    row: origin.row,
    column: origin.table.headers.get(field) ?? field,
    value: origin.table.shown(origin.row, field),
    ...faultWords("parent-missing", { parent }),
    severity: "error",
  };
}

function judged(
  draft: PlantDraft,
  plantId: string | null,
): { readonly plant: Plant | null; readonly faults: readonly ImportFault[] } {
  const parsed = Plant.safeParse(draft.assembled());
  if (!parsed.success) {
    return {
      plant: null,
      faults: parsed.error.issues.map((issue) =>
        faultAt(draft, issue.path, {
          problem: issue.message,
          remedy: "Correct the value; the manual lists every column.",
          cause: valueFault({ ...issue }),
        }),
      ),
    };
  }
  const plant = parsed.data;
  const faults = plantFaults(plant).map((fault) => recordFault(draft, fault));
  if (plantId !== null && plant.id !== plantId) {
    faults.push(faultAt(draft, ["id"], faultWords("other-plant", { plant: plantId })));
  }
  return { plant, faults };
}

function recordFault(draft: PlantDraft, fault: PlantFault): ImportFault {
  return faultAt(draft, fault.path, { problem: fault.cause, remedy: fault.remedy, cause: fault.said });
}

function faultAt(draft: PlantDraft, path: readonly PropertyKey[], said: FaultWords): ImportFault {
  const { origin, field } = draft.originOf(path);
  if (origin === null) {
    return {
      sheet: "stored plant",
      row: null,
      column: path.map(String).join("."),
      value: "",
      ...said,
      severity: "error",
    };
  }
  const header = origin.table.headers.get(field) ?? (field === "" ? null : field);
  return {
    sheet: origin.table.sheet,
    row: origin.row,
    column: header,
    value: origin.table.shown(origin.row, field),
    ...said,
    severity: "error",
  };
}

/** Records added, changed and left as they were, over all collections; the plant's own row counts as one. */
function countsOf(stored: Plant | null, plant: Plant): ImportOutcome["counts"] {
  const counts = { added: 0, changed: 0, unchanged: 0 };
  const count = (before: unknown, after: unknown): void => {
    if (before === undefined) counts.added += 1;
    else if (sameRecord(before, after)) counts.unchanged += 1;
    else counts.changed += 1;
  };
  for (const [field, value] of Object.entries(plant)) {
    if (!Array.isArray(value)) continue;
    const before = stored === null ? [] : (stored[field as keyof Plant] as readonly unknown[]);
    const known = new Map(before.map((record) => [identityOf(record), record]));
    for (const record of value as readonly unknown[]) count(known.get(identityOf(record)), record);
  }
  const own = (whole: Plant | null): unknown =>
    whole === null
      ? undefined
      : Object.fromEntries(Object.entries(whole).filter(([, value]) => !Array.isArray(value)));
  count(own(stored), own(plant));
  return counts;
}

function identityOf(record: unknown): string {
  const fields = record as Readonly<Record<string, unknown>>;
  return JSON.stringify([
    fields["id"],
    fields["name"] === undefined || fields["id"] !== undefined ? null : fields["name"],
    fields["lineId"],
    fields["mouldId"],
    fields["productId"],
    fields["lineIds"],
    fields["from"],
    fields["date"],
    fields["start"],
  ]);
}
