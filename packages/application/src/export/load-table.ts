import type { Bucket, ResourceKind, ResourceLoad } from "@formweek/capacity-model";
import { WHOLE_UNIT } from "@formweek/capacity-model";
import type { Cell, Table } from "../ports/table.ts";
import type { LoadView } from "../queries/get-load.ts";
import { type Column, hoursCell, momentCell, offsetCell, tableBy, textCell } from "./columns.ts";
import { type TableLanguage, tableWord } from "./table-words.ts";

interface LoadLine {
  readonly id: string;
  readonly units: number;
  readonly bucket: Bucket;
  readonly load: ResourceLoad;
}

export interface LoadTableInput {
  readonly view: Pick<LoadView, "rows" | "buckets">;
  readonly kind: ResourceKind;
  readonly timeZone: string;
  /** Id → name of the resources. */
  readonly names: ReadonlyMap<string, string>;
  readonly language: TableLanguage;
}

/** Load against capacity as one row a resource and bucket. Hours are those of one unit: line, copy, team or head. */
export function loadTable({ view, kind, timeZone, names, language }: LoadTableInput): Table {
  const lines = view.rows.flatMap(({ hours, loads }): readonly LoadLine[] =>
    view.buckets.flatMap((bucket, index) => {
      const load = loads[index];
      return load === undefined ? [] : [{ id: hours.id, units: hours.units, bucket, load }];
    }),
  );
  const hours =
    (pick: (load: ResourceLoad) => number) =>
    ({ load }: LoadLine): Cell =>
      hoursCell(pick(load) / WHOLE_UNIT);
  const columns: readonly Column<LoadLine>[] = [
    ["kind", () => tableWord(kind, language)],
    ["resource", ({ id }) => textCell(id)],
    ["resource name", ({ id }) => names.get(id) ?? null],
    ["units", ({ units }) => units / WHOLE_UNIT],
    ["bucket", ({ bucket }) => bucket.label],
    ["start", ({ bucket }) => momentCell(timeZone, bucket.start)],
    ["end", ({ bucket }) => momentCell(timeZone, bucket.end)],
    ["basis", ({ load }) => tableWord(load.basis, language)],
    ["run h", hours(({ run }) => run)],
    ["change h", hours(({ change }) => change)],
    ["stop h", hours(({ stop }) => stop)],
    ["idle h", hours(({ idle }) => idle)],
    ["closed h", hours(({ closed }) => closed)],
    ["committed h", hours(({ committed }) => committed)],
    ["available h", hours(({ available }) => available)],
    ["unattainable h", hours(({ unattainable }) => unattainable)],
    ["total h", hours(({ total }) => total)],
    ["beyond capacity h", hours(({ overload }) => overload)],
    ["outside hours h", hours(({ outside }) => outside)],
    ["load %", ({ load }) => (load.share === null ? null : Math.round(load.share * 10_000) / 100)],
    ["time zone", () => timeZone],
    ["start with offset", ({ bucket }) => offsetCell(timeZone, bucket.start)],
    ["end with offset", ({ bucket }) => offsetCell(timeZone, bucket.end)],
  ];
  return tableBy({ name: "load", columns, language }, lines);
}
