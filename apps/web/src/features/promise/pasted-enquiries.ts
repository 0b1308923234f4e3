import { missingEnquiryHeader } from "../../kernels/enquiry-header.ts";

/** Rows copied from a spreadsheet (cells parted by tabs) or CSV text as a CSV file; null when there is no row of enquiries. */
export async function pastedEnquiries(pasted: string): Promise<File | null> {
  const { default: papaparse } = await import("papaparse");
  const { data } = papaparse.parse<string[]>(pasted.trim(), {
    delimiter: pasted.includes("\t") ? "\t" : "",
    skipEmptyLines: "greedy",
  });
  const header = missingEnquiryHeader(data);
  const rows = header === null ? data : [[...header], ...data];
  if (rows.length < 2 || (rows[0]?.length ?? 0) < 2) return null;
  return new File([papaparse.unparse(rows, { newline: "\n" })], "enquiries.csv", { type: "text/csv" });
}
