import type { Plant } from "@formweek/capacity-model";
import type { OrderChange } from "../commands/order-changes.ts";
import { sameRecord } from "../import/same-record.ts";
import type { HoursEdit } from "../planning/plan-edit.ts";
import { type Result, ok, refused } from "../result.ts";

/** Lists of the plant's records that scenarios change. */
const LISTS = [
  "calendars",
  "lineClosures",
  "addedShifts",
  "moulds",
  "provenRates",
  "setterTeams",
] as const satisfies readonly (keyof Plant)[];
export type ChangedList = (typeof LISTS)[number];

/** A stretch of one list of the plant's records, as it was and as it became. */
export interface ListChange {
  readonly list: ChangedList;
  /** Place of its first record, from 0. */
  readonly at: number;
  readonly before: readonly object[];
  readonly after: readonly object[];
}

/** What adopting a scenario changed in plant and book. */
export interface AdoptedRecords {
  readonly kind: "adopt";
  readonly scenarioId: string;
  /** Revision of the scenario that was adopted. */
  readonly scenarioRevision: number;
  readonly plant: readonly ListChange[];
  readonly orders: readonly OrderChange[];
}

/** What a step of the working plan changed besides the plan. */
export type StepRecords = HoursEdit | AdoptedRecords;

/** What takes it back. */
export function inverseRecords(records: AdoptedRecords): AdoptedRecords {
  return {
    ...records,
    plant: records.plant.map(({ before, after, ...place }) => ({ ...place, before: after, after: before })),
    orders: records.orders.map(({ before, after }) => ({ before: after, after: before })),
  };
}

/** What is different between two states of a plant in the lists that scenarios change; one stretch a list. */
export function listChanges(from: Plant, to: Plant): readonly ListChange[] {
  return LISTS.flatMap((list): readonly ListChange[] => {
    const [before, after]: readonly (readonly object[])[] = [from[list], to[list]] as const;
    if (before === undefined || after === undefined || sameRecord(before, after)) return [];
    const shorter = Math.min(before.length, after.length);
    let at = 0;
    while (at < shorter && sameRecord(before[at], after[at])) at++;
    let rest = 0;
    while (rest < shorter - at && sameRecord(before.at(-1 - rest), after.at(-1 - rest))) rest++;
    return [
      {
        list,
        at,
        before: before.slice(at, before.length - rest),
        after: after.slice(at, after.length - rest),
      },
    ];
  });
}

/** The plant with the changes made, its records unchecked; the list in which something else stands by now, where there is one. */
export function withListChanges(plant: Plant, changes: readonly ListChange[]): Result<Plant, ChangedList> {
  let changed = plant;
  for (const { list, at, before, after } of changes) {
    const records: readonly object[] = changed[list];
    if (!sameRecord(records.slice(at, at + before.length), before)) return refused(list);
    changed = {
      ...changed,
      [list]: [...records.slice(0, at), ...after, ...records.slice(at + before.length)],
    };
  }
  return ok(changed);
}

/** Orders that are another, new or gone in a book; by number. */
export function orderChanges(from: readonly OrderOf[], to: readonly OrderOf[]): readonly OrderChange[] {
  const [before, after] = [from, to].map((orders) => new Map(orders.map((order) => [order.id, order])));
  return [...new Set([...(before?.keys() ?? []), ...(after?.keys() ?? [])])]
    .map((id) => ({ before: before?.get(id) ?? null, after: after?.get(id) ?? null }))
    .filter((change) => !sameRecord(change.before, change.after));
}

type OrderOf = NonNullable<OrderChange["before"]>;
