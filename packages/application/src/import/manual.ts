import type { ColumnKind, TableSpec } from "./column-spec.ts";

const KIND_WORDS: Readonly<Record<ColumnKind, string>> = {
  text: "text",
  whole: "whole number",
  decimal: "number",
  share: "share or %",
  "yes-no": "yes or no",
  moment: "day or day and time",
  "date-time": "day and time",
  date: "day",
  time: "time of day",
  list: "list, parted by ;",
  counts: "whole numbers, parted by ;",
  heads: "pools with heads, pool/heads parted by ;",
  weekdays: "weekdays",
  breaks: "breaks",
  moulds: "moulds",
};

/** The manual of one table in Markdown: every column with its other names, kind, meaning and what a blank cell means. */
export function manualOfTable(spec: TableSpec): string {
  const rows = spec.columns.map((column) => {
    const names = [column.header, ...column.aliases].map((name) => `\`${name}\``).join(", ");
    return `| ${names} | ${KIND_WORDS[column.kind]} | ${column.required ? "needed" : blankWords(column.blank)} | ${column.meaning} |`;
  });
  const others = spec.aliases.length === 0 ? "" : ` (also: ${spec.aliases.join(", ")})`;
  return [
    `## ${spec.name}${others}`,
    "",
    "| Column | Holds | Blank | Meaning |",
    "| --- | --- | --- | --- |",
    ...rows,
  ].join("\n");
}

function blankWords(blank: unknown): string {
  if (typeof blank === "boolean") return blank ? "yes" : "no";
  if (typeof blank === "string" || typeof blank === "number") return String(blank);
  return Array.isArray(blank) ? "none" : "may be blank";
}
