import {
  addedShiftSpan,
  compilePlantCalendars,
  instantOfLocalText,
  isSkippedWall,
  lineWorkingTime,
  localTextAt,
  parseLocalDate,
  parseLocalDateTime,
  workingBetween,
} from "@formweek/capacity-model";
import type { FormingLine, Plant, TimeWindow } from "@formweek/capacity-model";
import type { FieldFault } from "../errors.ts";
import { applyHours } from "./apply-hours.ts";
import type { HoursCause } from "./hours-cause.ts";
import { overlap, spanOfClosing } from "./hours-span.ts";
import type { HoursEdit, LineClosing, ShiftAdded } from "./plan-edit.ts";

/** What the change would be made to. */
export interface HoursNow {
  readonly plant: Plant;
  /** Horizon of the working plan: what lies outside it changes nothing that can be seen. */
  readonly horizon: TimeWindow;
}

/** Everything against a change of the plant's hours, at the fields of the change. */
export function hoursFaults(edit: HoursEdit, now: HoursNow): readonly FieldFault[] {
  switch (edit.kind) {
    case "close line":
      return closingFaults(edit.closure, now);
    case "open line":
      return openingFaults(edit, now);
    case "add shift":
      return shiftFaults(edit.shift, now);
    case "take shift back":
      return takingBackFaults(edit, now);
  }
}

const fault = (path: string, cause: HoursCause, problem: string, remedy: string): FieldFault => ({
  path: `edit.${path}`,
  problem,
  remedy,
  cause,
});

const asText = (local: string): string => local.replace("T", " ");

const spellText = ({ from, to, reason }: Pick<LineClosing, "from" | "to" | "reason">) => ({
  from: asText(from),
  to: asText(to),
  reason,
});

const noSuchDate = (path: string, date: string): FieldFault =>
  fault(
    path,
    { kind: "no such date", date },
    `${date} is no date of the calendar.`,
    "Correct the day or the month.",
  );

function closingFaults(closure: LineClosing, { plant, horizon }: HoursNow): readonly FieldFault[] {
  const { lineId, from, to } = closure;
  const faults = closureFaults(closure, plant);
  if (faults.length > 0) return faults;
  const span = spanOfClosing(closure, plant);
  if (span.end <= span.start)
    return [
      fault(
        "closure.to",
        { kind: "ends before start", from: asText(from), to: asText(to) },
        `It ends at ${asText(to)}, not after its start at ${asText(from)}.`,
        "Let it end after its start.",
      ),
    ];
  return [
    ...outsideFaults("closure", span, { plant, horizon }),
    ...plant.lineClosures
      .filter((other) => other.lineId === lineId && overlap(spanOfClosing(other, plant), span))
      .slice(0, 1)
      .map((other) =>
        fault(
          "closure.from",
          { kind: "line closed already", lineId, ...spellText(other) },
          `The line is closed already from ${asText(other.from)} to ${asText(other.to)} (${other.reason}).`,
          "Choose a spell beside it, or open the line again first and close it for the whole spell.",
        ),
      ),
  ];
}

/** Of a line that there is, from and to times that there are. */
function closureFaults({ lineId, from, to }: LineClosing, plant: Plant): readonly FieldFault[] {
  return [
    ...unknownLine("closure.lineId", lineId, plant),
    ...timeFaults("closure.from", from, plant.timeZone),
    ...timeFaults("closure.to", to, plant.timeZone),
  ];
}

function openingFaults(
  edit: Extract<HoursEdit, { readonly kind: "open line" }>,
  { plant, horizon }: HoursNow,
): readonly FieldFault[] {
  const { lineId } = edit.closure;
  const faults = closureFaults(edit.closure, plant);
  if (faults.length > 0) return faults;
  if (applyHours(plant, edit) === plant) {
    const own = plant.lineClosures.filter((closure) => closure.lineId === lineId);
    const named = own.map(({ from, to, reason }) => `${asText(from)} to ${asText(to)} (${reason})`);
    return [
      fault(
        "closure.from",
        { kind: "no such closure" },
        `The line has no such closure${named.length > 0 ? `; it is closed ${named.join(", ")}` : " of its own"}.`,
        "Look at the line's closures as they are now. A closure of a calendar holds for every line of it: add a shift instead.",
      ),
    ];
  }
  const { end } = spanOfClosing(edit.closure, plant);
  return end <= horizon.start ? [overFault("closure.to", end, { plant, horizon })] : [];
}

function shiftFaults(shift: ShiftAdded, { plant, horizon }: HoursNow): readonly FieldFault[] {
  const unknown = [...shiftReferences(shift, plant), ...shiftTimeFaults(shift, plant.timeZone)];
  if (unknown.length > 0) return unknown;
  const span = addedShiftSpan(shift, plant.timeZone);
  const outside = outsideFaults("shift", span, { plant, horizon });
  if (outside.length > 0) return outside;
  return shift.lineIds.flatMap((lineId, place) => {
    const line = plant.lines.find(({ id }) => id === lineId);
    return line === undefined ? [] : lineGainFaults(shift, { plant, line, path: `shift.lineIds.${place}` });
  });
}

function takingBackFaults(
  edit: Extract<HoursEdit, { readonly kind: "take shift back" }>,
  { plant, horizon }: HoursNow,
): readonly FieldFault[] {
  const { date, name } = edit.shift;
  const faults = [...shiftReferences(edit.shift, plant), ...shiftTimeFaults(edit.shift, plant.timeZone)];
  if (faults.length > 0) return faults;
  if (applyHours(plant, edit) === plant)
    return [
      fault(
        "shift",
        { kind: "no such added shift", name, date },
        `There is no such added shift "${name}" on ${date}: it was taken back already, or is another one now.`,
        "Look at the added shifts as they are now.",
      ),
    ];
  const { end } = addedShiftSpan(edit.shift, plant.timeZone);
  return end <= horizon.start ? [overFault("shift.date", end, { plant, horizon })] : [];
}

function unknownLine(path: string, lineId: string, { lines }: Plant): readonly FieldFault[] {
  if (lines.some(({ id }) => id === lineId)) return [];
  const named = lines.map(({ id }) => id).join(", ");
  return [
    fault(
      path,
      { kind: "no such line", lineId },
      `"${lineId}" is no line of this plant; its lines are ${named}.`,
      "Choose one of its lines.",
    ),
  ];
}

function shiftReferences(shift: ShiftAdded, plant: Plant): readonly FieldFault[] {
  const { lineIds, teamIds, operators } = shift;
  const poolIds = operators.map(({ poolId }) => poolId);
  if (lineIds.length + teamIds.length + poolIds.length === 0)
    return [
      fault(
        "shift.lineIds",
        { kind: "shift for nobody" },
        "The shift names no line and nobody who comes.",
        "Name a line, a setter team or operators.",
      ),
    ];
  const people = [
    { path: "teamIds", ids: teamIds, known: plant.setterTeams, what: "setter team" as const },
    { path: "operators", ids: poolIds, known: plant.operatorPools, what: "operator pool" as const },
  ];
  return [
    ...lineIds.flatMap((lineId, place) => unknownLine(`shift.lineIds.${place}`, lineId, plant)),
    ...people.flatMap(({ path, ids, known, what }) =>
      ids.flatMap((id, place) =>
        known.some((record) => record.id === id)
          ? []
          : [
              fault(
                `shift.${path}.${place}`,
                { kind: "unknown reference", to: what, id },
                `"${id}" is no ${what} of this plant.`,
                `Choose a ${what}.`,
              ),
            ],
      ),
    ),
    ...[
      { path: "lineIds", ids: lineIds },
      { path: "teamIds", ids: teamIds },
      { path: "operators", ids: poolIds },
    ].flatMap(({ path, ids }) =>
      ids.flatMap((id, place) =>
        ids.indexOf(id) === place
          ? []
          : [
              fault(
                `shift.${path}.${place}`,
                { kind: "named twice", id },
                `"${id}" is named twice.`,
                "Name it once.",
              ),
            ],
      ),
    ),
  ];
}

function shiftTimeFaults(shift: ShiftAdded, timeZone: string): readonly FieldFault[] {
  const { date, start, end } = shift;
  if (parseLocalDate(date) === null) return [noSuchDate("shift.date", date)];
  if (start === end)
    return [
      fault(
        "shift.end",
        { kind: "shift without length", at: start },
        `The shift starts and ends at ${start}.`,
        "Name another end; work a whole day in several shifts.",
      ),
    ];
  const skipped = timeFaults("shift.start", `${date}T${start}`, timeZone);
  if (skipped.length > 0) return skipped;
  const overnight = end < start;
  return overnight ? [] : timeFaults("shift.end", `${date}T${end}`, timeZone);
}

interface LineGain {
  readonly plant: Plant;
  readonly line: FormingLine;
  readonly path: string;
}

/** The shift has to give the line hours that it has not, and must not be swallowed by a closure of the line. */
function lineGainFaults(shift: ShiftAdded, { plant, line, path }: LineGain): readonly FieldFault[] {
  const span = addedShiftSpan(shift, plant.timeZone);
  const closed = plant.lineClosures.find(
    (closure) => closure.lineId === line.id && overlap(spanOfClosing(closure, plant), span),
  );
  if (closed !== undefined)
    return [
      fault(
        path,
        { kind: "line closed already", lineId: line.id, ...spellText(closed) },
        `${line.name} is closed from ${asText(closed.from)} to ${asText(closed.to)} (${closed.reason}).`,
        "Open the line again first, or choose other hours.",
      ),
    ];
  const working = lineWorkingTime(plant, line, compilePlantCalendars(plant, span));
  const { starts, ends } = span.workingTime;
  const gain = starts.reduce((sum, start, index) => {
    const end = ends[index] ?? start;
    return sum + end - start - workingBetween(working, start, end);
  }, 0);
  if (gain > 0) return [];
  return [
    fault(
      path,
      {
        kind: "line works already",
        lineId: line.id,
        from: `${shift.date} ${shift.start}`,
        to: shift.end,
      },
      `${line.name} works from ${shift.start} to ${shift.end} on ${shift.date} already.`,
      "Choose hours in which the line does not work, or leave it out.",
    ),
  ];
}

/** Of a day that there is, and of an hour that the clocks show on it. */
function timeFaults(path: string, local: string, timeZone: string): readonly FieldFault[] {
  const wall = parseLocalDateTime(local);
  if (wall === null) return [noSuchDate(path, local.slice(0, 10))];
  if (!isSkippedWall(timeZone, wall)) return [];
  const shown = localTextAt(timeZone, instantOfLocalText(timeZone, local) ?? 0);
  return [
    fault(
      path,
      { kind: "hour skipped", at: asText(local), instead: asText(shown) },
      `No clock shows ${asText(local)}: that hour is skipped when the clocks change.`,
      `Choose an hour that there is, such as ${asText(shown)}.`,
    ),
  ];
}

function outsideFaults(path: "closure" | "shift", span: TimeWindow, now: HoursNow): readonly FieldFault[] {
  const { plant, horizon } = now;
  if (span.end <= horizon.start)
    return [overFault(path === "closure" ? "closure.to" : "shift.date", span.end, now)];
  if (span.start < horizon.end) return [];
  return [
    fault(
      path === "closure" ? "closure.from" : "shift.date",
      { kind: "after plan", planEnd: asText(localTextAt(plant.timeZone, horizon.end)) },
      `It lies after ${asText(localTextAt(plant.timeZone, horizon.end))}, where the plan ends.`,
      "Choose a time within the plan.",
    ),
  ];
}

function overFault(path: string, end: number, { plant, horizon }: HoursNow): FieldFault {
  const local = (at: number): string => asText(localTextAt(plant.timeZone, at));
  return fault(
    path,
    { kind: "over before plan", over: local(end), planStart: local(horizon.start) },
    `It is over at ${local(end)}; the plan begins at ${local(horizon.start)}.`,
    "Choose a time that the plan has still ahead.",
  );
}
