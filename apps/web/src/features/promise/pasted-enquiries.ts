import { missingEnquiryHeader } from "../../kernels/enquiry-header.ts";

/** Pasted rows as a file, and as they stand then: with their header, so that the rows that faults name can be counted. */
export interface PastedEnquiries {
  readonly file: File;
  readonly text: string;
}

/** Rows copied from a spreadsheet (cells parted by tabs) or CSV text as a CSV file; null when there is no row of enquiries. */
export async function pastedEnquiries(pasted: string): Promise<PastedEnquiries | null> {
  const { default: papaparse } = await import("papaparse");
  const { data } = papaparse.parse<string[]>(pasted.trim(), {
    delimiter: pasted.includes("\t") ? "\t" : "",
    skipEmptyLines: "greedy",
  });
  const header = missingEnquiryHeader(data);
  const rows = header === null ? data : [[...header], ...data];
  if (rows.length < 2 || (rows[0]?.length ?? 0) < 2) return null;
  const csv = papaparse.unparse(rows, { newline: "\n" });
  return {
    file: new File([csv], "enquiries.csv", { type: "text/csv" }),
    text: header === null ? pasted : rows.map((row) => row.join("\t")).join("\n"),
  };
}
