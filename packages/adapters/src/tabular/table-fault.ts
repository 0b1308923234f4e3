import type { TableFault } from "@formweek/application";

/** Builds a fault of one file. */
export function tableFault(
  fileName: string,
  code: TableFault["code"],
  text: readonly [problem: string, remedy: string],
  row: number | null = null,
): TableFault {
  return { fileName, code, row, problem: text[0], remedy: text[1] };
}
