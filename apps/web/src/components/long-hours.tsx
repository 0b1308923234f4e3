import type { ShiftAdded } from "@formweek/contracts";
import type { JSX } from "react";
import { Icon } from "./icon.tsx";
import { useFormat } from "../format/use-format.ts";
import { spellsOf, type BoardPlan, type BoardSpell } from "../kernels/board-plan.ts";
import { hoursWithShift, isLongForOneCrew, LONGEST_WEEK_HOURS } from "../kernels/long-hours.ts";
import { weekAt } from "../kernels/plant-weeks.ts";
import type { ZoneClock } from "../kernels/zone-clock.ts";
import { useText } from "../text/text.ts";

interface LongHoursProps {
  readonly plan: BoardPlan;
  readonly clock: ZoneClock;
  readonly spell: BoardSpell;
  /** Null while day or times are missing. */
  readonly shift: ShiftAdded | null;
}

/** What an added shift asks of people by their calendars, and the usual caution about long hours. */
export function LongHours({ plan, clock, spell, shift }: LongHoursProps): JSX.Element {
  const { hours: text } = useText();
  const format = useFormat();
  const { startAt, endAt } = weekAt(clock, spell.start);
  const teams = plan.document.teams
    .filter(({ id }) => shift?.teamIds.includes(id) === true)
    .map(({ name, open }) => ({ name, open: spellsOf(open) }));
  const lines = plan.lines.filter(({ id }) => shift?.lineIds.includes(id) === true);
  const week = { start: startAt, end: endAt };
  const long = teams.flatMap(({ name, open }) => {
    const hours = hoursWithShift(open, spell, week);
    if (!isLongForOneCrew(hours)) return [];
    const rest = hours.restHours === null ? null : format.span(hours.restHours * 3600);
    return [
      text.longFor(name, format.span(hours.stretchHours * 3600), format.hours(hours.weekHours * 3600), rest),
    ];
  });
  const manned = lines.flatMap(({ name, open }) => {
    const { weekHours } = hoursWithShift(open, spell, week);
    return weekHours > LONGEST_WEEK_HOURS ? [text.longLine(name, format.hours(weekHours * 3600))] : [];
  });
  const sentences = [...long, ...manned];
  return (
    <section className="safety">
      <h3>
        <Icon name="warn" /> {text.cautionTitle}
      </h3>
      {sentences.length > 0 && (
        <ul>
          {sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      <p>{sentences.length > 0 ? text.cautionLong : text.caution}</p>
      <p className="hint">{text.cautionSource}</p>
    </section>
  );
}
