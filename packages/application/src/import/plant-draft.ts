import { POLYMER_DEFAULTS } from "@formweek/capacity-model";
import type { Plant } from "@formweek/capacity-model";
import type { ReadRow, ReadRows } from "./read-table.ts";

/** A record being put together, not yet checked by its schema. */
export type DraftRecord = Record<string, unknown>;

/** Row of a file that a record, or one entry of a record's child list, came from. */
export interface Origin {
  readonly table: ReadRows;
  readonly row: number;
}

/** Collections of a plant whose records have an identity of their own. */
export type Collection = Exclude<
  { [K in keyof Plant]: Plant[K] extends readonly object[] ? K : never }[keyof Plant],
  undefined
>;

const EMPTY: Record<Collection, readonly DraftRecord[]> = {
  calendars: [],
  lines: [],
  lineClosures: [],
  addedShifts: [],
  moulds: [],
  polymers: [],
  sheets: [],
  products: [],
  provenRates: [],
  setterTeams: [],
  trolleys: [],
  operatorPools: [],
  changeoverRules: [],
};

/** A plant under construction from tables: the stored one with rows laid over it, and where each part came from. */
export class PlantDraft {
  readonly #fields: DraftRecord;
  readonly #collections = new Map<Collection, DraftRecord[]>();
  /** Place of each record in its collection by key; the first of equal keys, as a search would find it. */
  readonly #places = new Map<Collection, Map<string, number>>();
  readonly #origins = new Map<object, Origin>();
  #plantOrigin: Origin | null = null;

  constructor(stored: Plant | null) {
    this.#fields = { ...stored };
    const base = stored ?? { ...EMPTY, polymers: Object.values(POLYMER_DEFAULTS) };
    for (const collection of Object.keys(EMPTY) as Collection[]) {
      this.#setRecords(
        collection,
        base[collection].map((record) => ({ ...record })),
      );
    }
  }

  /** Lays fields over the plant's own. */
  putPlant(fields: DraftRecord, origin: Origin): void {
    Object.assign(this.#fields, fields);
    this.#plantOrigin = origin;
  }

  /** Lays fields over the record with the same key, or adds it on top of `starting`. */
  put(collection: Collection, fields: DraftRecord, origin: Origin, starting: DraftRecord = {}): void {
    const records = this.#records(collection);
    const places = this.#placesOf(collection);
    const key = keyOf(collection, fields);
    const place = places.get(key);
    const merged = { ...(place === undefined ? starting : records[place]), ...fields };
    this.#origins.set(merged, origin);
    if (place === undefined) places.set(key, records.push(merged) - 1);
    else records[place] = merged;
  }

  /** Replaces a child field of a record; false when the record is not there. */
  setChild(
    target: { readonly collection: Collection; readonly key: string },
    field: string,
    value: unknown,
  ): boolean {
    const place = this.#placesOf(target.collection).get(target.key);
    const record = place === undefined ? undefined : this.#records(target.collection)[place];
    if (record === undefined) return false;
    record[field] = value;
    return true;
  }

  /** Replaces every record of a collection that `drop` names by the given ones. */
  replaceWhere(
    collection: Collection,
    drop: (record: DraftRecord) => boolean,
    by: readonly DraftRecord[],
  ): void {
    this.#setRecords(collection, [...this.#records(collection).filter((record) => !drop(record)), ...by]);
  }

  remember(part: object, origin: Origin): void {
    this.#origins.set(part, origin);
  }

  /** The whole plant, for its schema to judge. */
  assembled(): DraftRecord {
    return { ...this.#fields, ...Object.fromEntries(this.#collections) };
  }

  /** Where the part at a path of the plant came from, as near as is known; the field is what is left of the path. */
  originOf(path: readonly PropertyKey[]): { readonly origin: Origin | null; readonly field: string } {
    let value: unknown = this.assembled();
    let origin = this.#plantOrigin;
    let used = 0;
    path.forEach((step, index) => {
      value =
        typeof value === "object" && value !== null
          ? (value as Readonly<Record<PropertyKey, unknown>>)[step]
          : undefined;
      const found = typeof value === "object" && value !== null ? this.#origins.get(value) : undefined;
      if (found !== undefined) {
        origin = found;
        used = index + 1;
      } else if (index === 1 && typeof path[1] === "number") {
        origin = null;
      }
    });
    return { origin, field: path.slice(used).map(String).join(".") };
  }

  #setRecords(collection: Collection, records: DraftRecord[]): void {
    const places = new Map<string, number>();
    records.forEach((record, place) => {
      const key = keyOf(collection, record);
      if (!places.has(key)) places.set(key, place);
    });
    this.#collections.set(collection, records);
    this.#places.set(collection, places);
  }

  #placesOf(collection: Collection): Map<string, number> {
    return this.#places.get(collection) ?? new Map<string, number>();
  }

  #records(collection: Collection): DraftRecord[] {
    return this.#collections.get(collection) ?? [];
  }
}

/** What makes two rows speak of the same record. */
export function keyOf(collection: Collection, record: Readonly<DraftRecord>): string {
  switch (collection) {
    case "polymers":
      return String(record["name"]);
    case "provenRates":
      return JSON.stringify([record["lineId"], record["mouldId"], record["productId"]]);
    case "changeoverRules":
      return linesKey(record["lineIds"]);
    case "lineClosures":
      return JSON.stringify([record["lineId"], record["from"], record["to"]]);
    case "addedShifts": {
      const { date, name, start, end } = record;
      return JSON.stringify([date, name, start, end, linesKey(record["lineIds"])]);
    }
    default:
      return String(record["id"]);
  }
}

/** Changeover rules go by the lines they hold for. */
export function linesKey(lineIds: unknown): string {
  return JSON.stringify(
    Array.isArray(lineIds) ? [...(lineIds as string[])].sort((a, b) => (a < b ? -1 : 1)) : null,
  );
}

/** Fields "oven.heatedLengthMm" and "oven.maxNetFluxKwPerM2" as one nested record; fields left to their default are absent. */
export function nested(row: ReadRow): DraftRecord {
  const record: DraftRecord = {};
  for (const [path, value] of Object.entries(row.values)) {
    if (value === undefined) continue;
    const [field = "", inner] = path.split(".");
    if (inner === undefined) record[field] = value;
    else record[field] = { ...(record[field] as DraftRecord | undefined), [inner]: value };
  }
  return record;
}

/** The same record without the fields that only name its parent. */
export function without(record: DraftRecord, ...fields: readonly string[]): DraftRecord {
  return Object.fromEntries(Object.entries(record).filter(([field]) => !fields.includes(field)));
}
