/** Kinds of records that a fault can name. */
export type RecordKind =
  | "plant"
  | "calendar"
  | "line"
  | "closure of line"
  | "added shift"
  | "mould"
  | "sheet"
  | "product"
  | "order"
  | "polymer"
  | "proven rate"
  | "setter team"
  | "trolley"
  | "operator pool"
  | "changeover rules";

/** What can be wrong with a plant or an order book whose single records are all well formed, apart from words. */
export type RecordFault =
  | { readonly kind: "unknown time zone"; readonly zone: string }
  | { readonly kind: "duplicate id"; readonly of: RecordKind; readonly id: string }
  | { readonly kind: "duplicate polymer"; readonly name: string }
  | {
      readonly kind: "duplicate rate";
      readonly lineId: string;
      readonly mouldId: string;
      readonly productId: string;
    }
  | { readonly kind: "duplicate insert"; readonly insertId: string }
  | { readonly kind: "duplicate mould"; readonly mouldId: string }
  | { readonly kind: "unknown reference"; readonly to: RecordKind; readonly id: string }
  | { readonly kind: "unknown insert"; readonly mouldId: string; readonly insertId: string }
  | { readonly kind: "no such date"; readonly date: string }
  | { readonly kind: "ends before start"; readonly from: string; readonly to: string }
  | { readonly kind: "break outside shift"; readonly pause: string; readonly shift: string }
  /** `mouldId` null: a copy alone is named. */
  | { readonly kind: "mounted in part"; readonly mouldId: string | null }
  | {
      readonly kind: "copy beyond copies";
      readonly place: "mounted" | "out of service";
      readonly copy: number;
      readonly copies: number;
    }
  | { readonly kind: "cycles beyond copies"; readonly given: number; readonly copies: number }
  | {
      readonly kind: "copy mounted twice";
      readonly copy: number;
      readonly mouldId: string;
      readonly otherLineId: string;
    }
  | { readonly kind: "wrong table order"; readonly depthMm: number }
  | { readonly kind: "last mould class bounded"; readonly massKg: number }
  | { readonly kind: "mould class unbounded" }
  | { readonly kind: "wrong mould class order"; readonly massKg: number }
  /** `lineId` null: two sets hold for every line. Sets count from 1. */
  | { readonly kind: "two changeover sets"; readonly lineId: string | null; readonly otherSet: number }
  | { readonly kind: "no changeover rules"; readonly lineId: string }
  | { readonly kind: "start after due" };

/**
 * One thing wrong, in words for the planner and apart from them. `path` leads to the field as in the plant's record, e.g. ["lines", 0,
 * "calendarId"]; for orders it starts with the order's place in the list.
 */
export interface PlantFault {
  readonly said: RecordFault;
  readonly path: readonly (string | number)[];
  /** The record as a planner knows it: a line by its number, an added shift by name and day. */
  readonly of: { readonly kind: RecordKind; readonly name: string };
  readonly field: string;
  /** The value as text; "" for none. */
  readonly value: string;
  readonly cause: string;
  readonly remedy: string;
}

/** A record under examination: its place in the plant and the name people know it by. */
export interface Examined {
  readonly path: readonly (string | number)[];
  readonly of: PlantFault["of"];
}

export interface Finding {
  readonly said: RecordFault;
  /** Field inside the record; entries of lists by their place. */
  readonly field: readonly (string | number)[];
  readonly value: string | number | null;
  readonly cause: string;
  readonly remedy: string;
}

export function faultIn({ path, of }: Examined, { said, field, value, cause, remedy }: Finding): PlantFault {
  return {
    said,
    path: [...path, ...field],
    of,
    field: fieldText(field),
    value: value === null ? "" : String(value),
    cause,
    remedy,
  };
}

/** A record under examination, by its kind and the name people know it by. */
export function examined(path: Examined["path"], kind: RecordKind, name: string | number): Examined {
  return { path, of: { kind, name: String(name) } };
}

/** Examined records of one collection of the plant. */
export function examinedIn(
  collection: string,
  kind: RecordKind,
  ids: readonly string[],
): readonly Examined[] {
  return ids.map((id, index) => examined([collection, index], kind, id));
}

/** "breaks 2 start": list places counted from 1. */
function fieldText(field: readonly (string | number)[]): string {
  return field.map((part) => (typeof part === "number" ? part + 1 : part)).join(" ");
}
