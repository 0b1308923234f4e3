import type { FieldFault } from "../errors.ts";
import { appError } from "../errors.ts";
import type { WallClock } from "../import/cell-time.ts";
import type { ImportFault } from "../import/import-fault.ts";
import { isNamed, readTable } from "../import/read-table.ts";
import type { ReadRow } from "../import/read-table.ts";
import type { Table } from "../ports/table.ts";
import { type Result, ok, refused } from "../result.ts";
import { enquiryTable } from "./enquiry-table.ts";
import type { Enquiry } from "./promise-answer.ts";

/** An enquiry of several. */
export interface ListedEnquiry {
  /** Row of the file, or place in the list, from 1. */
  readonly row: number;
  /** What the file calls it; "" where it says nothing. */
  readonly reference: string;
  readonly enquiry: Enquiry;
}

/** Enquiries that are answered at once. */
export const MOST_ENQUIRIES = 200;

/** The enquiries of a file, or every cell that is wrong: nothing is answered by halves. */
export function readEnquiries(tables: readonly Table[]): Result<readonly ListedEnquiry[]> {
  const table = tables.find((each) => isNamed(each, enquiryTable)) ?? tables[0];
  if (table === undefined) return refused(tooMany(0));
  const { rows, faults } = readTable(table, enquiryTable);
  const errors = faults.filter(({ severity }) => severity === "error");
  if (errors.length > 0) return refused(badRows(errors.map(fieldFault)));
  if (rows.length === 0 || rows.length > MOST_ENQUIRIES) return refused(tooMany(rows.length));
  return ok(rows.map(listed));
}

function listed({ row, values }: ReadRow): ListedEnquiry {
  const wanted = values["wanted"] as WallClock | null;
  return {
    row,
    reference: String(values["reference"]),
    enquiry: {
      product: String(values["product"]),
      pieces: Number(values["pieces"]),
      wanted: wanted === null ? null : wanted.time === null ? wanted.date : `${wanted.date}T${wanted.time}`,
      partsAllowed: values["partsAllowed"] === true,
    },
  };
}

function fieldFault({ sheet, row, column, value, problem, remedy }: ImportFault): FieldFault {
  const place = [sheet, row === null ? null : `row ${row}`, column].filter((part) => part !== null);
  return { path: place.join(", "), problem: value === "" ? problem : `"${value}" ${problem}`, remedy };
}

const MOST_FAULTS = 50;

/** Rows of a file, or places of a list, that cannot be answered. */
export function badRows(faults: readonly FieldFault[]) {
  const more = faults.length === 1 ? "" : ` And ${faults.length - 1} more.`;
  return appError(
    "invalid-input",
    {
      title: "These enquiries cannot be answered.",
      cause: `${faults[0]?.path ?? ""}: ${faults[0]?.problem ?? ""}${more}`,
      remedy: "Correct what is named below and send them again. Nothing was answered.",
    },
    faults.slice(0, MOST_FAULTS),
  );
}

const tooMany = (count: number) =>
  appError("invalid-input", {
    title: count === 0 ? "There is no enquiry in it." : "There are too many enquiries in it.",
    cause: count === 0 ? "No row below the header is filled in." : `It has ${count} rows.`,
    remedy: `Send 1 to ${MOST_ENQUIRIES} enquiries at once.`,
  });
