import type { MouldCopy } from "@formweek/contracts";
import {
  spellsOf,
  type BoardLine,
  type BoardPlan,
  type BoardSegment,
  type BoardSpell,
} from "./board-plan.ts";
import { mouldWork, teamWork, type ResourceWork } from "./resource-work.ts";

/** What the board has one row of. */
export const rowChoices = ["lines", "moulds", "setter teams"] as const;
export type RowChoice = (typeof rowChoices)[number];

/** Whose time a row shows. */
export type RowResource =
  | { readonly kind: "line"; readonly line: BoardLine }
  | { readonly kind: "mould"; readonly mould: MouldCopy }
  | { readonly kind: "setter team"; readonly teamId: string };

/** A segment as it lies in a row: its span there is the part that takes the row's resource, seconds since the epoch. */
export interface RowPiece extends BoardSpell {
  readonly segment: BoardSegment;
  readonly rowIndex: number;
  /** Position among the row's pieces. */
  readonly place: number;
}

export interface BoardRow {
  readonly index: number;
  readonly resource: RowResource;
  /** Time in runs and changes, seconds. */
  readonly busySeconds: number;
  /** Working spells in order of time; null where the plan does not tell them. */
  readonly open: readonly BoardSpell[] | null;
  readonly closures: BoardLine["closures"];
  readonly extraShifts: BoardLine["extraShifts"];
  /** In order of time; they never overlap. */
  readonly pieces: readonly RowPiece[];
}

/** The plan laid out in rows of one kind. */
export interface BoardRows {
  readonly choice: RowChoice;
  readonly plan: BoardPlan;
  readonly rows: readonly BoardRow[];
  /** Where a segment lies, by its index: a change of moulds lies in the rows of both; without an entry it is in no row. */
  readonly piecesOf: ReadonlyMap<number, readonly RowPiece[]>;
}

const laidOut = new WeakMap<BoardPlan, Map<RowChoice, BoardRows>>();

/** Rows of a plan, laid out once for each choice. */
export function boardRows(plan: BoardPlan, choice: RowChoice): BoardRows {
  const known = laidOut.get(plan) ?? new Map<RowChoice, BoardRows>();
  laidOut.set(plan, known);
  const found = known.get(choice) ?? layOut(plan, choice);
  known.set(choice, found);
  return found;
}

type BareRow = Omit<BoardRow, "index" | "pieces" | "busySeconds"> & {
  readonly work: ResourceWork<unknown>["work"];
};

function layOut(plan: BoardPlan, choice: RowChoice): BoardRows {
  const piecesOf = new Map<number, RowPiece[]>();
  const rows = bareRows(plan, choice).map(({ work, ...row }, rowIndex): BoardRow => {
    const pieces = work.map((part, place): RowPiece => ({ ...part, rowIndex, place }));
    for (const piece of pieces) {
      const others = piecesOf.get(piece.segment.index);
      if (others === undefined) piecesOf.set(piece.segment.index, [piece]);
      else others.push(piece);
    }
    return { ...row, index: rowIndex, pieces, busySeconds: busySeconds(pieces) };
  });
  return { choice, plan, rows, piecesOf };
}

function bareRows(plan: BoardPlan, choice: RowChoice): readonly BareRow[] {
  switch (choice) {
    case "lines":
      return plan.lines.map((line) => ({
        resource: { kind: "line", line },
        open: line.open,
        closures: line.closures,
        extraShifts: line.extraShifts,
        work: line.segments.map((segment) => ({ segment, start: segment.start, end: segment.end })),
      }));
    case "moulds":
      return mouldWork(plan).flatMap(({ resource: mould, work }) =>
        withoutOverlap(work).map((lane) => ({ ...timeless, resource: { kind: "mould", mould }, work: lane })),
      );
    case "setter teams":
      return teamWork(plan).flatMap(({ resource: teamId, work }) =>
        withoutOverlap(work).map((lane) => ({
          ...timeless,
          open: hoursOfTeam(plan, teamId),
          resource: { kind: "setter team", teamId },
          work: lane,
        })),
      );
  }
}

const timeless = { open: null, closures: [], extraShifts: [] } as const;

/** When a team works; null in plans that do not tell it. */
function hoursOfTeam({ document }: BoardPlan, teamId: string): readonly BoardSpell[] | null {
  const team = document.teams.find(({ id }) => id === teamId);
  return team === undefined ? null : spellsOf(team.open);
}

/** A sound plan has each resource in one place at a time; one that does not takes a row more, and hides nothing. */
function withoutOverlap(work: BareRow["work"]): readonly BareRow["work"][] {
  const lanes: BareRow["work"][number][][] = [];
  for (const part of [...work].sort((a, b) => a.start - b.start || a.end - b.end)) {
    const free = lanes.find((lane) => (lane.at(-1)?.end ?? -Infinity) <= part.start);
    if (free === undefined) lanes.push([part]);
    else free.push(part);
  }
  return lanes;
}

function busySeconds(pieces: readonly RowPiece[]): number {
  return pieces.reduce(
    (sum, { segment, start, end }) => sum + (segment.source.kind === "stop" ? 0 : end - start),
    0,
  );
}

/** The piece that stands for a segment: in the row named where it has one there, else its first; null in no row. */
export function pieceOfSegment(rows: BoardRows, index: number, rowIndex?: number): RowPiece | null {
  const pieces = rows.piecesOf.get(index) ?? [];
  return pieces.find((piece) => piece.rowIndex === rowIndex) ?? pieces[0] ?? null;
}
