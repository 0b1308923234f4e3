import type { FaultCause } from "../fault-cause.ts";

/** Named parts of a fault's sentence: names and figures of the file. */
export type ImportFaultValues = Readonly<Record<string, string>>;

type Words = (values: ImportFaultValues) => readonly [problem: string, remedy: string];

const always =
  (problem: string, remedy: string): Words =>
  () => [problem, remedy];

const dateRemedy = "Write it as 2026-11-30 or 2026-11-30 14:00.";
const weekdayRemedy = "Write them as Mon-Fri or Sun,Mon.";
const wholeRemedy = "Write digits only, for example 185000.";

/** What a fault of each code says; the sentence begins with the place of the fault. */
const words = {
  "neither-yes-nor-no": always("is neither yes nor no", "Write yes or no."),
  "no-whole-number": always("is not a whole number", wholeRemedy),
  "no-count": always("is not a number", wholeRemedy),
  "no-number": always("is not a number", "Write digits, for example 1.2."),
  "thousand-or-fraction": ({ whole = "", fraction = "" }) => [
    "could be a thousand or a fraction",
    `Write ${whole} or ${fraction}.`,
  ],
  "spreadsheet-error": ({ mark = "" }) => [
    `holds the spreadsheet error ${mark}`,
    "Correct the formula or write the value.",
  ],
  "formula-not-computed": always(
    "holds a formula without a computed value",
    "Open the file in a spreadsheet program, save it, and load it again.",
  ),
  "control-characters": always(
    "holds control characters",
    "Type the text again without line breaks or tabs.",
  ),
  "no-weekdays": always("names no weekdays", weekdayRemedy),
  "no-break": ({ part = "" }) => [
    `holds "${part}", which is no break`,
    "Write breaks as 09:30-10:00; 12:00-12:30.",
  ],
  "no-heads": ({ part = "" }) => [
    `holds "${part}", which is no pool with its heads`,
    "Write pools with heads as packers/2; loaders/0.5.",
  ],
  "no-mould": always("names no mould", "Write mould ids as M1; M2/insert."),
  "no-date": always("is not a date", dateRemedy),
  "day-or-month-first": always("could be day/month or month/day", dateRemedy),
  "no-calendar-day": always("is not a day of the calendar", dateRemedy),
  "time-unreadable": always("has a time of day that cannot be read", dateRemedy),
  "number-for-date": always("is a number, not a date", dateRemedy),
  "time-for-day": always("holds a time where a day is wanted", "Write it as 2026-11-30."),
  "no-time-of-day": always("is not a time of day", "Write it as 06:00."),
  "read-as-date": ({ day = "" }) => [
    `was read as the date ${day}`,
    "Check it; write dates as 2026-11-30 to be sure.",
  ],
  blank: ({ meaning = "" }) => ["is empty", `Fill it in: ${meaning}`],
  "unknown-column": always(
    "is not a known column and is left out",
    "Rename it if it holds something that is needed.",
  ),
  "same-column": ({ column = "" }) => [
    `means the same as the column "${column}"`,
    "Keep one of the two columns.",
  ],
  "missing-columns": ({ columns = "" }) => [
    `has no column ${columns}`,
    "Add the column, or name it so in the header row.",
  ],
  "no-orders-on-sheet": always("holds no order table and is left out", "Nothing to do if that is right."),
  "no-plant-data-on-sheet": ({ known = "" }) => [
    "is no table of plant data and is left out",
    `Name it after what it holds: ${known}.`,
  ],
  "repeated-order": ({ row = "", sheet = "" }) => [
    `stands already in row ${row} of ${sheet}`,
    "Give each order one row; add up its pieces or number the parts.",
  ],
  "repeated-record": ({ row = "" }) => [`stands already in row ${row}`, "Keep one row for each record."],
  "parent-missing": ({ parent = "" }) => [
    `names ${parent}, which is not there`,
    "Add the record that it belongs to, or correct the id.",
  ],
  "other-plant": ({ plant = "" }) => [
    `is not ${plant}, the plant you are working on`,
    `Write ${plant}, or load it as a new plant.`,
  ],
  "unknown-product": ({ nearest = "" }) => [
    "is no product of this plant",
    nearest === ""
      ? "Add the product to the plant first, or correct the name."
      : `Did you mean ${nearest.split("; ").join(" or ")}? Else add the product to the plant first.`,
  ],
  "due-before-planning": always(
    "is before the planning start, so the order is late already",
    "Correct it if it is a slip.",
  ),
} satisfies Readonly<Record<string, Words>>;

export type ImportFaultCode = keyof typeof words;

/** What is wrong and what to do, in English; and apart from words where a code tells it. */
export interface FaultWords {
  readonly problem: string;
  readonly remedy: string;
  readonly code?: ImportFaultCode;
  readonly values?: ImportFaultValues;
  /** Where there is no code: the same apart from words. */
  readonly cause?: FaultCause;
}

/** The words of a code with its values. */
export function faultWords(code: ImportFaultCode, values: ImportFaultValues = {}): FaultWords {
  const wording: Words = words[code];
  const [problem, remedy] = wording(values);
  return { problem, remedy, code, values };
}
