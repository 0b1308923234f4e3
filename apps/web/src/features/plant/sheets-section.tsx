import type { JSX } from "react";
import type { Plant, Sheet } from "@formweek/capacity-model";
import { RecordTable, type RecordColumn } from "../../components/record-table.tsx";
import { SheetBand } from "../../components/sheet-band.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useText } from "../../text/text.ts";

const keyOf = (sheet: Sheet): string => sheet.id;
const wordsOf = (sheet: Sheet): string => `${sheet.id} ${sheet.name} ${sheet.polymer} ${sheet.colour.name}`;

export function SheetsSection({ plant }: { readonly plant: Plant }): JSX.Element {
  const { plant: text, units } = useText();
  const format = useFormat();
  const columns: readonly RecordColumn<Sheet>[] = [
    { title: text.sheet.name, cell: (sheet) => sheet.name },
    { title: text.sheet.colour, cell: (sheet) => <SheetBand colour={sheet.colour} /> },
    { title: text.sheet.polymer, cell: (sheet) => sheet.polymer },
    {
      title: text.sheet.thickness,
      cell: (sheet) => units.mm(format.decimal(sheet.thicknessMm, 2)),
      isNumber: true,
    },
    { title: text.sheet.width, cell: (sheet) => units.mm(format.count(sheet.widthMm)), isNumber: true },
    { title: text.sheet.reel, cell: (sheet) => units.kg(format.count(sheet.reelKg)), isNumber: true },
    {
      title: text.sheet.stock,
      cell: (sheet) => (sheet.stockKg === null ? text.notTracked : units.kg(format.count(sheet.stockKg))),
      isNumber: true,
    },
    {
      title: text.sheet.arrivals,
      cell: (sheet) =>
        sheet.arrivals
          .map((arrival) =>
            text.sheet.arrival(units.kg(format.count(arrival.kg)), arrival.at.replace("T", " ")),
          )
          .join("; "),
    },
  ];
  return (
    <RecordTable
      caption={text.sections.sheets}
      rows={plant.sheets}
      columns={columns}
      keyOf={keyOf}
      wordsOf={wordsOf}
    />
  );
}
