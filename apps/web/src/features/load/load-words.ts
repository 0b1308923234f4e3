import type { Plant } from "@formweek/capacity-model";
import type { LoadBucket, ResourceKind } from "@formweek/contracts";
import type { Format } from "../../format/format.ts";
import type { Text } from "../../text/text.ts";

/** Names of a kind of resource by id; the id where the plant does not know it. */
export function resourceName(plant: Plant, kind: ResourceKind, id: string): string {
  const records: readonly { readonly id: string; readonly name: string }[] = {
    line: plant.lines,
    mould: plant.moulds,
    team: plant.setterTeams,
    pool: plant.operatorPools,
  }[kind];
  return records.find((record) => record.id === id)?.name ?? id;
}

const seconds = (instant: string): number => Date.parse(instant) / 1000;

/** A bucket in two short lines for the head of a column. */
export function bucketHead(
  { label, start }: LoadBucket,
  { load }: Text,
  format: Format,
): readonly [top: string, below: string] {
  const week = /^\d{4}-W(\d{2})$/.exec(label)?.[1];
  if (week !== undefined) return [load.week(String(Number(week))), format.shortDay(seconds(start))];
  const shift = label.split(" ").slice(1).join(" ");
  return [format.day(seconds(start)), shift === "" ? "" : shift];
}

/** A bucket in one piece. */
export function bucketName(bucket: LoadBucket, text: Text, format: Format): string {
  return bucketHead(bucket, text, format)
    .filter((part) => part !== "")
    .join(", ");
}
