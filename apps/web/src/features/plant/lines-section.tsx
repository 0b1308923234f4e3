import type { JSX } from "react";
import type { FormingLine, Plant } from "@formweek/capacity-model";
import { RecordTable, type RecordColumn } from "../../components/record-table.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useText } from "../../text/text.ts";

const keyOf = (line: FormingLine): string => line.id;
const wordsOf = (line: FormingLine): string => `${line.id} ${line.name} ${line.polymers.join(" ")}`;

export function LinesSection({ plant }: { readonly plant: Plant }): JSX.Element {
  const { plant: text, units } = useText();
  const format = useFormat();
  const calendars = new Map(plant.calendars.map((calendar) => [calendar.id, calendar.name]));
  const moulds = new Map(plant.moulds.map((mould) => [mould.id, mould.name]));
  const number = (value: number): string => format.decimal(value, value % 1 === 0 ? 0 : 1);
  const between = (from: number, to: number): string => units.mm(`${number(from)} – ${number(to)}`);
  const columns: readonly RecordColumn<FormingLine>[] = [
    { title: text.line.name, cell: (line) => line.name },
    {
      title: text.line.area,
      cell: (line) => units.mm(`${number(line.formingLengthMm)} × ${number(line.formingWidthMm)}`),
      isNumber: true,
    },
    {
      title: text.line.depth,
      cell: (line) => units.mm(`${number(line.maxDepthDownMm)} / ${number(line.maxDepthUpMm)}`),
      isNumber: true,
    },
    {
      title: text.line.sheet,
      cell: (line) => between(line.sheetThicknessMinMm, line.sheetThicknessMaxMm),
      isNumber: true,
    },
    {
      title: text.line.width,
      cell: (line) => between(line.sheetWidthMinMm, line.sheetWidthMaxMm),
      isNumber: true,
    },
    { title: text.line.polymers, cell: (line) => line.polymers.join(", ") },
    { title: text.line.trim, cell: (line) => units.kN(number(line.trimForceKn)), isNumber: true },
    { title: text.line.air, cell: (line) => units.bar(number(line.formingAirMaxBar)), isNumber: true },
    { title: text.line.mass, cell: (line) => units.kg(number(line.maxMouldMassKg)), isNumber: true },
    {
      title: text.line.dry,
      cell: (line) => units.perMinute(number(line.maxDryCyclesPerMin)),
      isNumber: true,
    },
    {
      title: text.line.stacker,
      cell: (line) => units.perMinute(number(line.stackerMaxCyclesPerMin)),
      isNumber: true,
    },
    {
      title: text.line.rim,
      cell: (line) =>
        line.rimRollingMaxCyclesPerMin === null
          ? text.none
          : units.perMinute(number(line.rimRollingMaxCyclesPerMin)),
      isNumber: true,
    },
    {
      title: text.line.extruder,
      cell: (line) =>
        line.extruderFlowKgPerH === null ? text.none : units.kgPerHour(number(line.extruderFlowKgPerH)),
      isNumber: true,
    },
    { title: text.line.loading, cell: (line) => text.loadingSides[line.loadingSide] },
    {
      title: text.line.operators,
      cell: (line) => format.decimal(line.operatorsNeeded, line.operatorsNeeded % 1 === 0 ? 0 : 2),
      isNumber: true,
    },
    { title: text.line.calendar, cell: (line) => calendars.get(line.calendarId) ?? line.calendarId },
    { title: text.line.factor, cell: (line) => format.percent(line.performanceFactor), isNumber: true },
    {
      title: text.line.mounted,
      cell: (line) =>
        line.mounted.mouldId === null
          ? text.none
          : (moulds.get(line.mounted.mouldId) ?? line.mounted.mouldId),
    },
  ];
  return (
    <RecordTable
      caption={text.sections.lines}
      rows={plant.lines}
      columns={columns}
      keyOf={keyOf}
      wordsOf={wordsOf}
    />
  );
}
