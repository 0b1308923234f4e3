import type { JSX } from "react";
import type { Plant, WorkCalendar } from "@formweek/capacity-model";
import { useFormat } from "../../format/use-format.ts";
import { weekBars, weekHours } from "../../kernels/week-bars.ts";
import { useText } from "../../text/text.ts";

/** Monday 5 January 1970: seven days from here have the names of a week, in UTC. */
const mondaySeconds = 4 * 86_400;

export function CalendarsSection({ plant }: { readonly plant: Plant }): JSX.Element {
  const { plant: text, hours } = useText();
  const lines = new Map(plant.lines.map((line) => [line.id, line.name]));
  return (
    <div className="cards">
      {plant.calendars.map((calendar) => (
        <CalendarCard key={calendar.id} calendar={calendar} usedBy={usersOf(plant, calendar)} />
      ))}
      {plant.lineClosures.length > 0 && (
        <section className="card">
          <h3>{text.calendar.lineClosures}</h3>
          <ul>
            {plant.lineClosures.map((closure) => (
              <li key={`${closure.lineId} ${closure.from}`}>
                {lines.get(closure.lineId) ?? closure.lineId}: {closure.reason},{" "}
                {text.calendar.fromTo(wallText(closure.from), wallText(closure.to))}
              </li>
            ))}
          </ul>
        </section>
      )}
      {plant.addedShifts.length > 0 && (
        <section className="card">
          <h3>{hours.added}</h3>
          <ul>
            {plant.addedShifts.map((shift) => (
              <li key={`${shift.date} ${shift.start} ${shift.lineIds.join()}`}>
                {shift.date}: {text.calendar.shift(shift.name, shift.start, shift.end)},{" "}
                {shift.lineIds.map((id) => lines.get(id) ?? id).join(", ")}
              </li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}

interface CalendarCardProps {
  readonly calendar: WorkCalendar;
  readonly usedBy: readonly string[];
}

function CalendarCard({ calendar, usedBy }: CalendarCardProps): JSX.Element {
  const { plant: text } = useText();
  const format = useFormat();
  const bars = weekBars(calendar.shifts);
  return (
    <section className="card">
      <h3>{calendar.name}</h3>
      <p className="hint">
        {text.calendar.hours(format.decimal(weekHours(bars), 0))} · {text.calendar.usedBy}:{" "}
        {usedBy.length === 0 ? text.calendar.nobody : usedBy.join(", ")}
      </p>
      <div className="week" aria-hidden="true">
        {bars.map((bar, at) => (
          <span
            key={at}
            className="week-bar"
            style={{ left: `${bar.from * 100}%`, width: `${(bar.to - bar.from) * 100}%` }}
          />
        ))}
        {[0, 1, 2, 3, 4, 5, 6].map((day) => (
          <span key={`day ${day}`} className="week-day" style={{ left: `${(day / 7) * 100}%` }}>
            {format.weekday(mondaySeconds + day * 86_400)}
          </span>
        ))}
      </div>
      <ul>
        {calendar.shifts.map((shift) => (
          <li key={`${shift.name} ${shift.start} ${shift.weekdays.join()}`}>
            {shift.weekdays
              .map((weekday) => format.weekday(mondaySeconds + (weekday - 1) * 86_400))
              .join(" ")}
            : {text.calendar.shift(shift.name, shift.start, shift.end)}
            {shift.breaks.length > 0 && `, ${text.calendar.breaks(shift.breaks.length)}`}
          </li>
        ))}
        {calendar.closures.map((closure) => (
          <li key={closure.from}>
            {closure.reason}: {text.calendar.fromTo(wallText(closure.from), wallText(closure.to))}
          </li>
        ))}
        {calendar.extraShifts.map((shift) => (
          <li key={`${shift.date} ${shift.start}`}>
            {shift.date}: {text.calendar.shift(shift.name, shift.start, shift.end)}
          </li>
        ))}
      </ul>
    </section>
  );
}

function usersOf(plant: Plant, calendar: WorkCalendar): readonly string[] {
  return [
    ...plant.lines.filter((line) => line.calendarId === calendar.id).map((line) => line.name),
    ...plant.setterTeams.filter((team) => team.calendarId === calendar.id).map((team) => team.name),
    ...plant.operatorPools
      .filter((pool) => pool.crews.some((crew) => crew.calendarId === calendar.id))
      .map((pool) => pool.name),
  ];
}

function wallText(wall: string): string {
  return wall.replace("T", " ");
}
