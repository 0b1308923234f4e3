import { missingHeader } from "../../kernels/pasted-header.ts";

/**
 * Rows copied from a spreadsheet (cells parted by tabs) or CSV text as a CSV file; null when there is no row of orders.
 * Rows without a header get the one that fits their number of columns.
 */
export async function pastedFile(pasted: string): Promise<File | null> {
  const { default: papaparse } = await import("papaparse");
  const { data } = papaparse.parse<string[]>(pasted.trim(), {
    delimiter: pasted.includes("\t") ? "\t" : "",
    skipEmptyLines: "greedy",
  });
  const header = missingHeader(data);
  const rows = header === null ? data : [[...header], ...data];
  if (rows.length < 2 || (rows[0]?.length ?? 0) < 2) return null;
  return new File([papaparse.unparse(rows, { newline: "\n" })], "pasted.csv", { type: "text/csv" });
}
