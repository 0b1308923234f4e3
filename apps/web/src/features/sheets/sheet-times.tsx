import type { JSX } from "react";
import type { Format } from "../../format/format.ts";
import { useFormat } from "../../format/use-format.ts";
import type { SheetRow } from "../../kernels/line-sheet.ts";
import { useText } from "../../text/text.ts";

/** "14:00" under the day of the start, with its day where that lies before the week. */
export function startText({ start }: SheetRow, dayAt: number, format: Format): string {
  return start < dayAt ? format.instant(start) : format.clock(start);
}

/** "22:00" on the day of the start, else with its day. */
export function untilText({ start, end }: SheetRow, format: Format): string {
  return format.day(start) === format.day(end) ? format.clock(end) : format.instant(end);
}

/** Says what part of the work lies outside the week; nothing when it all lies within. */
export function OverBorder({ row }: { readonly row: SheetRow }): JSX.Element | null {
  const { sheets } = useText();
  const format = useFormat();
  if (row.begunAt === null && row.goesOnUntil === null) return null;
  return (
    <small className="sheet-border">
      {[
        ...(row.begunAt === null ? [] : [sheets.begun(format.instant(row.begunAt))]),
        ...(row.goesOnUntil === null ? [] : [sheets.goesOn(format.instant(row.goesOnUntil))]),
      ].join("; ")}
    </small>
  );
}
