import type { Plant, ResourceKind } from "@formweek/capacity-model";
import { loadTable } from "../export/load-table.ts";
import type { TableLanguage } from "../export/table-words.ts";
import { currentLoad } from "../load/current-load.ts";
import { ok } from "../result.ts";
import type { UseCase } from "../use-case.ts";
import { loadView, type LoadViewInput } from "./get-load.ts";
import { fileDate, fileOf, fileStem, type TableFormat, type WrittenFile } from "./written-file.ts";

export interface LoadFileInput extends LoadViewInput {
  readonly format: TableFormat;
  readonly language: TableLanguage;
}

/** Load against capacity as a table to take away, with the buckets that the screen shows. */
export const exportLoad: UseCase<LoadFileInput, WrittenFile> = {
  role: "viewer",
  run: async (ports, input) => {
    const { plantId, kind, bucket, format, language } = input;
    const current = await currentLoad(ports, plantId);
    if (!current.ok) return current;
    const { load } = current.value;
    const view = loadView(load, input);
    const { timeZone } = load.plant;
    const table = loadTable({ view, kind, timeZone, names: namesOf(load.plant, kind), language });
    const from = fileDate(timeZone, view.buckets[0]?.start ?? load.window.start, "day");
    const stem = `${fileStem(plantId)}-load-${kind}-${bucket}-${from}`;
    return ok(await fileOf(ports.tableWriter, table, { stem, format }));
  },
};

function namesOf(plant: Plant, kind: ResourceKind): ReadonlyMap<string, string> {
  const records = {
    line: plant.lines,
    mould: plant.moulds,
    team: plant.setterTeams,
    pool: plant.operatorPools,
  }[kind];
  return new Map(records.map(({ id, name }) => [id, name]));
}
