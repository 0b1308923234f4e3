/** Rows copied from a spreadsheet (cells parted by tabs) or CSV text as a CSV file; null when there is no row below a header. */
export async function pastedFile(pasted: string): Promise<File | null> {
  const { default: papaparse } = await import("papaparse");
  const { data } = papaparse.parse<string[]>(pasted.trim(), {
    delimiter: pasted.includes("\t") ? "\t" : "",
    skipEmptyLines: "greedy",
  });
  if (data.length < 2 || (data[0]?.length ?? 0) < 2) return null;
  return new File([papaparse.unparse(data, { newline: "\n" })], "pasted.csv", { type: "text/csv" });
}
