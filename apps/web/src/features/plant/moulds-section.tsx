import type { JSX } from "react";
import type { Mould, Plant } from "@formweek/capacity-model";
import { RecordTable, type RecordColumn } from "../../components/record-table.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useText } from "../../text/text.ts";

const keyOf = (mould: Mould): string => mould.id;
const wordsOf = (mould: Mould): string => `${mould.id} ${mould.name} ${mould.family}`;

export function MouldsSection({ plant }: { readonly plant: Plant }): JSX.Element {
  const { plant: text, units } = useText();
  const format = useFormat();
  const lines = new Map(plant.lines.map((line) => [line.id, line.name]));
  const number = (value: number): string => format.decimal(value, value % 1 === 0 ? 0 : 1);
  const columns: readonly RecordColumn<Mould>[] = [
    { title: text.mould.name, cell: (mould) => mould.name },
    { title: text.mould.family, cell: (mould) => mould.family },
    {
      title: text.mould.cavities,
      cell: ({ cavitiesAlong, cavitiesAcross }) =>
        text.mould.cavitiesText(
          `${cavitiesAlong}`,
          `${cavitiesAcross}`,
          format.count(cavitiesAlong * cavitiesAcross),
        ),
      isNumber: true,
    },
    {
      title: text.mould.footprint,
      cell: (mould) => units.mm(`${number(mould.footprintLengthMm)} × ${number(mould.footprintWidthMm)}`),
      isNumber: true,
    },
    { title: text.mould.depth, cell: (mould) => units.mm(number(mould.depthMm)), isNumber: true },
    { title: text.mould.mass, cell: (mould) => units.kg(format.count(mould.massKg)), isNumber: true },
    { title: text.mould.copies, cell: (mould) => format.count(mould.copies), isNumber: true },
    {
      title: text.mould.lines,
      cell: (mould) => mould.approvedLineIds?.map((id) => lines.get(id) ?? id).join(", ") ?? text.all,
    },
    {
      title: text.mould.heat,
      cell: (mould) =>
        `${units.minutes(number(mould.heatUpMinutes))}${mould.preheatable ? `, ${text.mould.preheat}` : ""}`,
    },
    { title: text.mould.stacker, cell: (mould) => mould.stackerTooling },
    { title: text.mould.rim, cell: (mould) => mould.rimTooling ?? text.none },
    {
      title: text.mould.service,
      cell: (mould) =>
        mould.serviceAfterCycles === null
          ? text.none
          : text.mould.serviceText(format.count(mould.serviceAfterCycles), number(mould.serviceHours)),
    },
    {
      title: text.mould.out,
      cell: (mould) =>
        mould.outOfService.length === 0
          ? ""
          : mould.outOfService
              .map((spell) => `${spell.reason}: ${wallText(spell.from)} – ${wallText(spell.to)}`)
              .join("; "),
    },
    {
      title: text.mould.cycles,
      cell: (mould) => units.perMinute(number(mould.maxCyclesPerMin)),
      isNumber: true,
    },
  ];
  return (
    <RecordTable
      caption={text.sections.moulds}
      rows={plant.moulds}
      columns={columns}
      keyOf={keyOf}
      wordsOf={wordsOf}
    />
  );
}

function wallText(wall: string): string {
  return wall.replace("T", " ");
}
