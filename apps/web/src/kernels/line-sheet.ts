import type { ChangeSegment, RunSegment, StopSegment } from "@formweek/contracts";
import type { BoardLine, BoardSegment } from "./board-plan.ts";
import type { PlantWeek } from "./plant-weeks.ts";
import { dayMarks } from "./time-marks.ts";
import type { ZoneClock } from "./zone-clock.ts";

/** What a row of a sheet is about. */
export type SheetWork =
  | {
      readonly kind: "run";
      readonly run: RunSegment;
      /** The stretch itself crosses a border of the week, so that its pieces are not all of this week. */
      readonly isCut: boolean;
    }
  | {
      readonly kind: "change";
      readonly change: ChangeSegment;
      /** The sheet material before and after; null where it stays, or where nothing runs on that side. */
      readonly sheetOut: RunSegment | null;
      readonly sheetIn: RunSegment | null;
    }
  | { readonly kind: "stop"; readonly stop: StopSegment }
  | { readonly kind: "closure"; readonly reason: string };

/** One row of a sheet; instants are seconds since the epoch. */
export interface SheetRow {
  readonly key: string;
  readonly start: number;
  readonly end: number;
  readonly work: SheetWork;
  /** Set on the week's first row of work that began before the week: when it began. */
  readonly begunAt: number | null;
  /** Set on the week's last row of work that goes on after the week: when it ends. */
  readonly goesOnUntil: number | null;
}

export interface SheetDay {
  /** Midnight in the plant's zone. */
  readonly at: number;
  readonly rows: readonly SheetRow[];
}

/** What a line does in a week, for the floor: by day, days without a row left out. */
export interface LineSheet {
  readonly line: BoardLine;
  readonly week: PlantWeek;
  readonly days: readonly SheetDay[];
}

/**
 * Work begun before the week stands on its first day. Half-open: what ends as the week begins is not on it. A line with
 * nothing planned in the week has no day, also where it is closed for a dated reason.
 */
export function lineSheet(clock: ZoneClock, line: BoardLine, week: PlantWeek): LineSheet {
  const rows = rowsOf(line, week);
  const days = dayMarks(clock, week.startAt, week.endAt).map(({ at, lengthSeconds }): SheetDay => {
    const isHere = ({ start }: SheetRow): boolean => {
      const shownAt = Math.max(start, week.startAt);
      return shownAt >= at && shownAt < at + lengthSeconds;
    };
    return { at, rows: rows.filter(isHere) };
  });
  return { line, week, days: days.filter((day) => day.rows.length > 0) };
}

function rowsOf(line: BoardLine, week: PlantWeek): readonly SheetRow[] {
  const touches = ({ start, end }: Spell): boolean => start < week.endAt && end > week.startAt;
  const lots = lotSpans(line);
  const segments = line.segments.filter(touches);
  if (segments.length === 0) return [];
  const rows = segments.map((segment, at): SheetRow => {
    const { source } = segment;
    const whole = source.kind === "run" ? (lots.get(lotKey(source)) ?? segment) : segment;
    const isSameLot = (other: BoardSegment): boolean =>
      other === segment ||
      (source.kind === "run" && other.source.kind === "run" && lotKey(other.source) === lotKey(source));
    return {
      key: `${segment.index}`,
      start: segment.start,
      end: segment.end,
      work: workOf(line, segment, week),
      begunAt: segments.findIndex(isSameLot) === at && whole.start < week.startAt ? whole.start : null,
      goesOnUntil: segments.findLastIndex(isSameLot) === at && whole.end > week.endAt ? whole.end : null,
    };
  });
  const closures = line.closures.filter(touches).map(({ start, end, reason }, at): SheetRow => {
    return {
      key: `closure ${at}`,
      start,
      end,
      work: { kind: "closure", reason },
      begunAt: start < week.startAt ? start : null,
      goesOnUntil: end > week.endAt ? end : null,
    };
  });
  // A closure stands before the stop that it causes.
  return [...closures, ...rows].sort((a, b) => a.start - b.start);
}

function workOf(line: BoardLine, { source, place, start, end }: BoardSegment, week: PlantWeek): SheetWork {
  switch (source.kind) {
    case "run":
      return { kind: "run", run: source, isCut: start < week.startAt || end > week.endAt };
    case "stop":
      return { kind: "stop", stop: source };
    case "change": {
      const before = nearestRun(line.segments.slice(0, place).reverse());
      const after = nearestRun(line.segments.slice(place + 1));
      const isKept = before?.sheetId === after?.sheetId;
      return {
        kind: "change",
        change: source,
        sheetOut: isKept ? null : before,
        sheetIn: isKept ? null : after,
      };
    }
  }
}

function nearestRun(segments: readonly BoardSegment[]): RunSegment | null {
  for (const { source } of segments) if (source.kind === "run") return source;
  return null;
}

interface Spell {
  readonly start: number;
  readonly end: number;
}

/** From the first stretch to the last of each lot that the line makes. */
function lotSpans(line: BoardLine): ReadonlyMap<string, Spell> {
  const spans = new Map<string, Spell>();
  for (const { source, start, end } of line.segments) {
    if (source.kind !== "run") continue;
    const known = spans.get(lotKey(source));
    spans.set(lotKey(source), { start: known?.start ?? start, end });
  }
  return spans;
}

function lotKey({ orderId, lot }: RunSegment): string {
  return `${lot} ${orderId}`;
}
