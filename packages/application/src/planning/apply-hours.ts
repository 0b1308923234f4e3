import { AddedShift, LineClosure } from "@formweek/capacity-model";
import type { Plant } from "@formweek/capacity-model";
import type { HoursEdit } from "./plan-edit.ts";

/** What takes the change back. */
export function inverseHours(edit: HoursEdit): HoursEdit {
  switch (edit.kind) {
    case "close line":
      return { ...edit, kind: "open line" };
    case "open line":
      return { ...edit, kind: "close line" };
    case "add shift":
      return { ...edit, kind: "take shift back" };
    case "take shift back":
      return { ...edit, kind: "add shift" };
  }
}

/**
 * The plant after a change of its hours, its records unchecked; the plant itself where the hours are so already. New records
 * stand in the order of their time, so that one that comes back stands where it stood.
 */
export function applyHours(plant: Plant, edit: HoursEdit): Plant {
  switch (edit.kind) {
    case "close line": {
      const lineClosures = withRecord(
        plant.lineClosures,
        LineClosure.parse(edit.closure),
        ({ from }) => from,
      );
      return lineClosures === plant.lineClosures ? plant : { ...plant, lineClosures };
    }
    case "open line": {
      const lineClosures = withoutRecord(plant.lineClosures, LineClosure.parse(edit.closure));
      return lineClosures === plant.lineClosures ? plant : { ...plant, lineClosures };
    }
    case "add shift": {
      const addedShifts = withRecord(plant.addedShifts, AddedShift.parse(edit.shift), startOf);
      return addedShifts === plant.addedShifts ? plant : { ...plant, addedShifts };
    }
    case "take shift back": {
      const addedShifts = withoutRecord(plant.addedShifts, AddedShift.parse(edit.shift));
      return addedShifts === plant.addedShifts ? plant : { ...plant, addedShifts };
    }
  }
}

const startOf = ({ date, start }: AddedShift): string => `${date}T${start}`;

/** Records come from one schema, which writes their fields in one order. */
const isSame = (one: object, other: object): boolean => JSON.stringify(one) === JSON.stringify(other);

function withRecord<T extends object>(records: T[], record: T, timeOf: (record: T) => string): T[] {
  if (records.some((each) => isSame(each, record))) return records;
  const later = records.findIndex((each) => timeOf(each) > timeOf(record));
  return records.toSpliced(later < 0 ? records.length : later, 0, record);
}

function withoutRecord<T extends object>(records: T[], record: T): T[] {
  const place = records.findIndex((each) => isSame(each, record));
  return place < 0 ? records : records.toSpliced(place, 1);
}
