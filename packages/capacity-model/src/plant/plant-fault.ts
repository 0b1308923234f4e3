/** What can be wrong with a plant or an order book whose single records are all well formed. */
export type PlantFaultCode =
  | "unknown-time-zone"
  | "duplicate-id"
  | "duplicate-record"
  | "duplicate-entry"
  | "unknown-reference"
  | "no-such-date"
  | "ends-before-start"
  | "break-outside-shift"
  | "copy-beyond-copies"
  | "mounted-in-part"
  | "copy-mounted-twice"
  | "wrong-mould-class-order"
  | "wrong-table-order"
  | "wrong-changeover-sets"
  | "no-changeover-rules"
  | "start-after-due";

/**
 * One thing wrong, in words for the planner. `path` leads to the field as in the plant's record, e.g. ["lines", 0,
 * "calendarId"]; for orders it starts with the order's place in the list.
 */
export interface PlantFault {
  readonly code: PlantFaultCode;
  readonly path: readonly (string | number)[];
  /** The record as a planner knows it, e.g. "line L1". */
  readonly record: string;
  readonly field: string;
  /** The value as text; "" for none. */
  readonly value: string;
  readonly cause: string;
  readonly remedy: string;
}

/** A record under examination: its place in the plant and the name people know it by. */
export interface Examined {
  readonly path: readonly (string | number)[];
  readonly record: string;
}

export interface Finding {
  readonly code: PlantFaultCode;
  /** Field inside the record; entries of lists by their place. */
  readonly field: readonly (string | number)[];
  readonly value: string | number | null;
  readonly cause: string;
  readonly remedy: string;
}

export function faultIn(examined: Examined, { code, field, value, cause, remedy }: Finding): PlantFault {
  return {
    code,
    path: [...examined.path, ...field],
    record: examined.record,
    field: fieldText(field),
    value: value === null ? "" : String(value),
    cause,
    remedy,
  };
}

/** Examined records of one collection of the plant. */
export function examinedIn(collection: string, kind: string, ids: readonly string[]): readonly Examined[] {
  return ids.map((id, index) => ({ path: [collection, index], record: `${kind} ${id}` }));
}

/** "breaks 2 start": list places counted from 1. */
function fieldText(field: readonly (string | number)[]): string {
  return field.map((part) => (typeof part === "number" ? part + 1 : part)).join(" ");
}
