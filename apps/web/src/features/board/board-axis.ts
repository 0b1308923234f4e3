import type { Plant } from "@formweek/capacity-model";
import type { BoardPlan } from "../../kernels/board-plan.ts";
import {
  dayMarks,
  hourMarks,
  mergeMarks,
  shiftMarks,
  type DayMark,
  type ShiftPattern,
  type TimeMark,
} from "../../kernels/time-marks.ts";
import { zoneClock } from "../../kernels/zone-clock.ts";

/** Days of the board and the marks within them, ready for every zoom. */
export interface BoardAxis {
  readonly days: readonly DayMark[];
  /** Marks within days for a day that is so many pixels wide. */
  readonly marksFor: (dayPx: number) => readonly TimeMark[];
}

const marginSeconds = 9 * 7 * 86_400;
const hourSteps = [
  { fromPx: 2400, hours: 1 },
  { fromPx: 1300, hours: 2 },
  { fromPx: 700, hours: 4 },
] as const;

/** The axis of a plan in its plant's zone; shifts are those of the calendar that most lines work by. */
export function boardAxis(plan: BoardPlan, plant: Plant | undefined): BoardAxis {
  const clock = zoneClock(plan.document.plant.timeZone);
  const days = dayMarks(clock, plan.startAt - marginSeconds, plan.endAt + marginSeconds);
  const patterns = plant === undefined ? [] : leadingShifts(plant);
  const shifts = patterns.length === 0 ? hourMarks(clock, days, 6) : shiftMarks(clock, days, patterns);
  const fine = new Map<number, readonly TimeMark[]>();
  return {
    days,
    marksFor: (dayPx) => {
      const step = hourSteps.find(({ fromPx }) => dayPx >= fromPx);
      if (step === undefined) return shifts;
      const known =
        fine.get(step.hours) ??
        mergeMarks(hourMarks(clock, days, step.hours), patterns.length === 0 ? [] : shifts);
      fine.set(step.hours, known);
      return known;
    },
  };
}

function leadingShifts(plant: Plant): readonly ShiftPattern[] {
  const uses = new Map<string, number>();
  for (const line of plant.lines) uses.set(line.calendarId, (uses.get(line.calendarId) ?? 0) + 1);
  const [leading] = [...plant.calendars].sort((a, b) => (uses.get(b.id) ?? 0) - (uses.get(a.id) ?? 0));
  return leading?.shifts ?? [];
}
