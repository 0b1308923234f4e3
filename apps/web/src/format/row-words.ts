import type { Format } from "./format.ts";
import type { PlanNames } from "./plan-names.ts";
import type { BoardRow } from "../kernels/board-rows.ts";
import type { Text } from "../text/text.ts";

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

/** Name of a row for its label, and what stands for it where that has no room; the copy is told below, with the use. */
export function rowLabel(
  row: BoardRow,
  names: PlanNames,
): { readonly name: string; readonly shortName: string } {
  if (row.resource.kind === "mould") {
    const { mouldId } = row.resource.mould;
    return { name: names.mouldAlone(mouldId), shortName: mouldId };
  }
  const name = rowName(row, names);
  return { name, shortName: name };
}

/** How much the plan asks of a row's resource. */
export function rowUse(
  { resource, busySeconds, pieces }: BoardRow,
  { names, text, format }: { readonly names: PlanNames; readonly text: Text; readonly format: Format },
): string {
  switch (resource.kind) {
    case "line":
      return text.board.used(format.percent(resource.line.usedShare));
    case "mould": {
      const copy = names.copyNumber(resource.mould);
      const time = format.hours(busySeconds);
      return copy === null ? text.board.mouldUse(time) : text.board.copyUse(copy, time);
    }
    case "setter team":
      return text.board.teamUse(format.count(pieces.length), format.hours(busySeconds));
  }
}
