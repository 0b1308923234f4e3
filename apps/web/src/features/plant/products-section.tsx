import type { JSX } from "react";
import type { Plant, Product } from "@formweek/capacity-model";
import { RecordTable, type RecordColumn } from "../../components/record-table.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useText } from "../../text/text.ts";

const keyOf = (product: Product): string => product.id;
const wordsOf = (product: Product): string =>
  `${product.id} ${product.name} ${product.moulds.map((choice) => choice.mouldId).join(" ")}`;

export function ProductsSection({ plant }: { readonly plant: Plant }): JSX.Element {
  const { plant: text, units } = useText();
  const format = useFormat();
  const moulds = new Map(plant.moulds.map((mould) => [mould.id, mould.name]));
  const sheets = new Map(plant.sheets.map((sheet) => [sheet.id, sheet.name]));
  const columns: readonly RecordColumn<Product>[] = [
    { title: text.product.name, cell: (product) => product.name },
    {
      title: text.product.moulds,
      cell: (product) =>
        [...new Set(product.moulds.map((choice) => moulds.get(choice.mouldId) ?? choice.mouldId))].join(", "),
    },
    { title: text.product.sheet, cell: (product) => sheets.get(product.sheetId) ?? product.sheetId },
    {
      title: text.product.mass,
      cell: (product) => units.grams(format.decimal(product.netMassG, 1)),
      isNumber: true,
    },
    {
      title: text.product.rim,
      cell: (product) => (product.rimRolled ? text.product.rolled : text.product.plain),
    },
    {
      title: text.product.pack,
      cell: (product) =>
        text.product.packText(
          format.count(product.piecesPerStack),
          format.count(product.stacksPerCarton),
          format.count(product.cartonsPerPallet),
        ),
    },
    {
      title: text.product.scrap,
      cell: (product) => format.percentFine(product.runScrapShare),
      isNumber: true,
    },
    { title: text.product.least, cell: (product) => format.count(product.leastRunPieces), isNumber: true },
    { title: text.product.rounding, cell: (product) => text.roundingUnits[product.roundingUnit] },
    {
      title: text.product.conditioning,
      cell: (product) => units.hours(format.decimal(product.conditioningHours, 0)),
      isNumber: true,
    },
    { title: text.product.stock, cell: (product) => format.count(product.stockPieces), isNumber: true },
    {
      title: text.product.safety,
      cell: (product) => format.count(product.safetyStockPieces),
      isNumber: true,
    },
  ];
  return (
    <RecordTable
      caption={text.sections.products}
      rows={plant.products}
      columns={columns}
      keyOf={keyOf}
      wordsOf={wordsOf}
    />
  );
}
