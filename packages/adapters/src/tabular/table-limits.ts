import type { Table, TableFault, TableLimits } from "@formweek/application";
import { tableFault } from "./table-fault.ts";

/** The first limit that the tables of one file exceed; null when they keep them all. */
export function limitFault(
  fileName: string,
  tables: readonly Table[],
  limits: TableLimits,
): TableFault | null {
  if (tables.length > limits.maxTables) {
    return tableFault(fileName, "too-many-tables", [
      `has ${String(tables.length)} sheets; ${String(limits.maxTables)} are read`,
      "Leave out the sheets that are not needed.",
    ]);
  }
  for (const table of tables) {
    if (table.rows.length > limits.maxRowsPerTable) {
      return tableFault(fileName, "too-many-rows", [
        `has more rows in ${table.name} than the ${String(limits.maxRowsPerTable)} that are read`,
        "Load it in parts.",
      ]);
    }
    for (const [index, row] of table.rows.entries()) {
      if (row.length > limits.maxColumns) {
        return tableFault(
          fileName,
          "too-many-columns",
          [
            `has ${String(row.length)} columns; ${String(limits.maxColumns)} are read`,
            "Leave out the columns that are not needed.",
          ],
          index + 1,
        );
      }
      if (row.some((cell) => typeof cell === "string" && cell.length > limits.maxCellCharacters)) {
        return tableFault(
          fileName,
          "cell-too-long",
          [`has a cell of more than ${String(limits.maxCellCharacters)} characters`, "Shorten it."],
          index + 1,
        );
      }
    }
  }
  return null;
}
