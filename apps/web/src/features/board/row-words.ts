import type { Format } from "../../format/format.ts";
import type { PlanNames } from "../../format/plan-names.ts";
import type { BoardRow } from "../../kernels/board-rows.ts";
import type { Text } from "../../text/text.ts";

/** Name of the line, mould copy or team that a row is of. */
export function rowName({ resource }: BoardRow, names: PlanNames): string {
  switch (resource.kind) {
    case "line":
      return resource.line.name;
    case "mould":
      return names.mould(resource.mould);
    case "setter team":
      return names.team(resource.teamId);
  }
}

/** How much the plan asks of a row's resource. */
export function rowUse(
  { resource, busySeconds, pieces }: BoardRow,
  { text, format }: { readonly text: Text; readonly format: Format },
): string {
  switch (resource.kind) {
    case "line":
      return text.board.used(format.percent(resource.line.usedShare));
    case "mould":
      return text.board.mouldUse(format.hours(busySeconds));
    case "setter team":
      return text.board.teamUse(format.count(pieces.length), format.hours(busySeconds));
  }
}
