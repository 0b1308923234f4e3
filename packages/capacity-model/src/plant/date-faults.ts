import { parseLocalDate, parseLocalDateTime, parseLocalTime } from "../calendar/civil-date.ts";
import { faultIn } from "./plant-fault.ts";
import type { Examined, PlantFault } from "./plant-fault.ts";
import type { Plant } from "./plant.ts";

/** Dates that no calendar has, spells that end before they start, and breaks that lie outside their shift. */
export function dateFaults(plant: Plant): readonly PlantFault[] {
  const start = { path: [], record: `plant ${plant.id}` };
  return [
    ...(plant.planFrom === null ? [] : dateFault(start, ["planFrom"], plant.planFrom)),
    ...plant.calendars.flatMap((calendar, index) => {
      const from = { path: ["calendars", index], record: `calendar ${calendar.id}` };
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
      spellFaults(
        { path: ["lineClosures", index], record: `closure of line ${closure.lineId}` },
        [],
        closure,
      ),
    ),
    ...plant.addedShifts.flatMap((shift, index) => {
      const from = { path: ["addedShifts", index], record: `added shift ${shift.name} of ${shift.date}` };
      return [...dateFault(from, ["date"], shift.date), ...breakFaults(from, [], shift)];
    }),
    ...plant.moulds.flatMap((mould, index) =>
      mould.outOfService.flatMap((spell, place) =>
        spellFaults({ path: ["moulds", index], record: `mould ${mould.id}` }, ["outOfService", place], spell),
      ),
    ),
    ...plant.sheets.flatMap((sheet, index) =>
      sheet.arrivals.flatMap((arrival, place) =>
        dateFault(
          { path: ["sheets", index], record: `sheet ${sheet.id}` },
          ["arrivals", place, "at"],
          arrival.at,
        ),
      ),
    ),
  ];
}

type Field = readonly (string | number)[];

function dateFault(from: Examined, field: Field, text: string): readonly PlantFault[] {
  if (parseLocalDate(text) !== null) return [];
  const cause = `${text.slice(0, 10)} is no date of the calendar.`;
  return [
    faultIn(from, {
      code: "no-such-date",
      field,
      value: text,
      cause,
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
      code: "ends-before-start",
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
    return [
      faultIn(from, {
        code: "break-outside-shift",
        field: [...field, "breaks", place],
        value: `${pause.start}–${pause.end}`,
        cause: `The break ${pause.start}–${pause.end} does not lie within the shift ${shift.start}–${shift.end}.`,
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
