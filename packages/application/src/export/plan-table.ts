import type { DocumentChange, DocumentLine, DocumentRun, PlanDocument } from "../planning/plan-document.ts";
import type { Table } from "../ports/table.ts";
import { type Column, hoursCell, momentCell, offsetCell, tableBy, textCell } from "./columns.ts";
import type { TableLanguage } from "./table-words.ts";

/** A run with what the plan says of it elsewhere. */
interface PlannedRun {
  readonly run: DocumentRun;
  readonly lineName: string;
  /** ISO 8601 UTC: when the lot is ready for dispatch; null where the plan does not say. */
  readonly finish: string | null;
  /** Changes of the line since its last run. */
  readonly changes: readonly DocumentChange[];
}

/**
 * The plan as one row a run, by line as on the board, then start; a lot that pauses has several rows. Times are the plant's
 * clock, with its zone beside them, and once more with their offset from UTC. `teamNames`: setter team id → name, the id itself where it is not known (any more).
 */
export function planTable(
  document: PlanDocument,
  teamNames: ReadonlyMap<string, string>,
  language: TableLanguage,
): Table {
  const finishes = new Map(document.lots.map((lot) => [lotKey(lot), lot.finish]));
  const runs = document.lines.flatMap((line) => runsOfLine(document, line, finishes));
  const columns = columnsOf(document.plant.timeZone, teamNames);
  return tableBy({ name: "plan", columns, language }, runs);
}

const lotKey = ({ orderId, lot }: { readonly orderId: string; readonly lot: number }): string =>
  `${lot} ${orderId}`;

function runsOfLine(
  document: PlanDocument,
  line: DocumentLine,
  finishes: ReadonlyMap<string, string>,
): readonly PlannedRun[] {
  const runs: PlannedRun[] = [];
  let changes: readonly DocumentChange[] = [];
  for (const segment of document.segments) {
    if (segment.lineId !== line.id) continue;
    if (segment.kind === "change") changes = [...changes, segment];
    if (segment.kind !== "run") continue;
    runs.push({ run: segment, lineName: line.name, finish: finishes.get(lotKey(segment)) ?? null, changes });
    changes = [];
  }
  return runs;
}

function columnsOf(timeZone: string, teamNames: ReadonlyMap<string, string>): readonly Column<PlannedRun>[] {
  return [
    ["order", ({ run }) => run.orderId],
    // people count lots from 1, as the board does
    ["lot", ({ run }) => run.lot + 1],
    ["customer", ({ run }) => textCell(run.customer)],
    ["product", ({ run }) => run.productId],
    ["product name", ({ run }) => run.productName],
    ["line", ({ run }) => run.lineId],
    ["line name", ({ lineName }) => lineName],
    ["mould", ({ run }) => run.mould?.mouldId ?? null],
    ["mould copy", ({ run }) => run.mould?.copy ?? null],
    ["mould name", ({ run }) => textCell(run.mouldName)],
    ["sheet", ({ run }) => textCell(run.sheetId)],
    ["sheet name", ({ run }) => textCell(run.sheetName)],
    ["pieces", ({ run }) => run.pieces],
    ["start", ({ run }) => momentCell(timeZone, run.start)],
    ["end", ({ run }) => momentCell(timeZone, run.end)],
    ["lot finish", ({ finish }) => momentCell(timeZone, finish)],
    ["due", ({ run }) => momentCell(timeZone, run.due)],
    ["order hours late", ({ run }) => hoursCell(run.lateSeconds)],
    ["change before min", ({ changes }) => minutesOf(changes)],
    ["setter team", ({ changes }) => textCell(teamsOf(changes, teamNames))],
    ["time zone", () => timeZone],
    ["start with offset", ({ run }) => offsetCell(timeZone, run.start)],
    ["end with offset", ({ run }) => offsetCell(timeZone, run.end)],
    ["lot finish with offset", ({ finish }) => offsetCell(timeZone, finish)],
    ["due with offset", ({ run }) => offsetCell(timeZone, run.due)],
  ];
}

/** Minutes of work, to a tenth as the plan has them. */
function minutesOf(changes: readonly DocumentChange[]): number {
  return Math.round(changes.reduce((sum, change) => sum + change.minutes, 0) * 10) / 10;
}

function teamsOf(changes: readonly DocumentChange[], names: ReadonlyMap<string, string>): string {
  const ids = new Set(changes.flatMap(({ teamId }) => teamId ?? []));
  return [...ids].map((id) => names.get(id) ?? id).join("; ");
}
