import { parseLocalDate, parseLocalDateTime, parseLocalTime } from "../calendar/civil-date.ts";
import { examined, faultIn } from "./plant-fault.ts";
import type { Examined, PlantFault } from "./plant-fault.ts";
import type { Plant } from "./plant.ts";

/** Dates that no calendar has, spells that end before they start, and breaks that lie outside their shift. */
export function dateFaults(plant: Plant): readonly PlantFault[] {
  const start = examined([], "plant", plant.id);
  return [
    ...(plant.planFrom === null ? [] : dateFault(start, ["planFrom"], plant.planFrom)),
    ...plant.calendars.flatMap((calendar, index) => {
      const from = examined(["calendars", index], "calendar", calendar.id);
      return [
        ...calendar.closures.flatMap((closure, place) => spellFaults(from, ["closures", place], closure)),
        ...calendar.extraShifts.flatMap((shift, place) =>
          dateFault(from, ["extraShifts", place, "date"], shift.date),
        ),
        ...calendar.shifts.flatMap((shift, place) => breakFaults(from, ["shifts", place], shift)),
        ...calendar.extraShifts.flatMap((shift, place) => breakFaults(from, ["extraShifts", place], shift)),
      ];
    }),
    ...plant.lineClosures.flatMap((closure, index) =>
      spellFaults(examined(["lineClosures", index], "closure of line", closure.lineId), [], closure),
    ),
    ...plant.addedShifts.flatMap((shift, index) => {
      const from = examined(["addedShifts", index], "added shift", `${shift.name}, ${shift.date}`);
      return [...dateFault(from, ["date"], shift.date), ...breakFaults(from, [], shift)];
    }),
    ...plant.moulds.flatMap((mould, index) =>
      mould.outOfService.flatMap((spell, place) =>
        spellFaults(examined(["moulds", index], "mould", mould.id), ["outOfService", place], spell),
      ),
    ),
    ...plant.sheets.flatMap((sheet, index) =>
      sheet.arrivals.flatMap((arrival, place) =>
        dateFault(examined(["sheets", index], "sheet", sheet.id), ["arrivals", place, "at"], arrival.at),
      ),
    ),
  ];
}

type Field = readonly (string | number)[];

function dateFault(from: Examined, field: Field, text: string): readonly PlantFault[] {
  if (parseLocalDate(text) !== null) return [];
  const date = text.slice(0, 10);
  return [
    faultIn(from, {
      said: { kind: "no such date", date },
      field,
      value: text,
      cause: `${date} is no date of the calendar.`,
      remedy: "Correct the day or the month.",
    }),
  ];
}

function spellFaults(
  from: Examined,
  field: Field,
  spell: { readonly from: string; readonly to: string },
): readonly PlantFault[] {
  const dates = [
    ...dateFault(from, [...field, "from"], spell.from),
    ...dateFault(from, [...field, "to"], spell.to),
  ];
  const start = parseLocalDateTime(spell.from);
  const end = parseLocalDateTime(spell.to);
  if (start === null || end === null || start < end) return dates;
  return [
    ...dates,
    faultIn(from, {
      said: { kind: "ends before start", from: spell.from, to: spell.to },
      field: [...field, "to"],
      value: spell.to,
      cause: `It ends at ${spell.to}, not after its start at ${spell.from}.`,
      remedy: "Let it end after its start, or delete it.",
    }),
  ];
}

interface ShiftTimes {
  readonly start: string;
  readonly end: string;
  readonly breaks: readonly { readonly start: string; readonly end: string }[];
}

const MINUTES_PER_DAY = 24 * 60;

function breakFaults(from: Examined, field: Field, shift: ShiftTimes): readonly PlantFault[] {
  const length = minutesFrom(shift.start, shift.end) || MINUTES_PER_DAY;
  return shift.breaks.flatMap((pause, place) => {
    const begins = minutesFrom(shift.start, pause.start);
    const ends = begins + minutesFrom(pause.start, pause.end);
    if (begins < ends && ends <= length) return [];
    const said = {
      kind: "break outside shift",
      pause: `${pause.start}–${pause.end}`,
      shift: `${shift.start}–${shift.end}`,
    } as const;
    return [
      faultIn(from, {
        said,
        field: [...field, "breaks", place],
        value: said.pause,
        cause: `The break ${said.pause} does not lie within the shift ${said.shift}.`,
        remedy: "Put the break inside the shift, or delete it.",
      }),
    ];
  });
}

/** Minutes from one clock time to the next coming round of another, 0 … 1439. */
function minutesFrom(start: string, end: string): number {
  const difference = ((parseLocalTime(end) ?? 0) - (parseLocalTime(start) ?? 0)) / 60;
  return (difference + MINUTES_PER_DAY) % MINUTES_PER_DAY;
}
